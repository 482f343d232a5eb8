package org.driftward.ingest.fuzz;

import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/**
 * Breaks XML where its structure is: an element gone, repeated, moved or renamed, a value that
 * nobody expects; now and then single bytes.
 */
public final class XmlMutator {

  private final List<Document> wholes;

  /**
   * @param wholes well-formed inputs to start from
   */
  public XmlMutator(List<String> wholes) {
    this.wholes = wholes.stream().map(XmlMutator::parse).toList();
  }

  public byte[] next(Random random) {
    var document = (Document) wholes.get(random.nextInt(wholes.size())).cloneNode(true);
    int mutations = 1 + random.nextInt(3);
    for (int i = 0; i < mutations; i++) {
      mutate(document, random);
    }
    var bytes = write(document);
    return random.nextInt(8) == 0 ? Bytes.broken(bytes, random) : bytes;
  }

  private static void mutate(Document document, Random random) {
    var target = any(document, random);
    var parent = target.getParentNode();
    boolean root = target == document.getDocumentElement();
    switch (random.nextInt(6)) {
      case 0 -> target.setAttribute("value", legal(Odd.text(random)));
      case 1 -> target.removeAttribute("value");
      case 2 -> {
        if (!root) {
          parent.removeChild(target);
        }
      }
      case 3 -> {
        if (!root) {
          parent.insertBefore(target.cloneNode(true), target);
        }
      }
      case 4 -> any(document, random).appendChild(target.cloneNode(true));
      default ->
          document.renameNode(
              target, target.getNamespaceURI(), any(document, random).getLocalName());
    }
  }

  private static Element any(Document document, Random random) {
    var all = document.getElementsByTagName("*");
    return (Element) all.item(random.nextInt(all.getLength()));
  }

  /** XML has no way to write most control characters and half a surrogate pair. */
  private static String legal(String text) {
    return text.codePoints()
        .filter(c -> c == '\n' || (c >= 0x20 && !(c >= 0xD800 && c <= 0xDFFF)))
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private static Document parse(String xml) {
    try {
      var factory = DocumentBuilderFactory.newDefaultNSInstance();
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    } catch (Exception e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static byte[] write(Document document) {
    try {
      var out = new StringWriter();
      TransformerFactory.newDefaultInstance()
          .newTransformer()
          .transform(new DOMSource(document), new StreamResult(out));
      return out.toString().getBytes(StandardCharsets.UTF_8);
    } catch (Exception e) {
      throw new IllegalArgumentException(e);
    }
  }
}
