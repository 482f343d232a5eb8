package org.driftward.dashboard.screen;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import org.driftward.ingest.contract.Bytes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BytesViewTest {

  @ParameterizedTest
  @ValueSource(
      strings = {"{\"a\": 1}", "MSH|^~\\&|LAB\rPID|1\r", "a,b\r\nc,d\r\n", "a\nb\n", "\n\né"})
  void shouldGiveTheSameBytesBackThroughAForm(String text) {
    var bytes = Bytes.of(text.getBytes(UTF_8));

    var view = BytesView.of(bytes, "text/plain");

    assertThat(view.mendable()).isTrue();
    assertThat(BytesView.mended(throughAForm(view.text()), bytes, "text/plain"))
        .isEqualTo(bytes.array());
  }

  @Test
  void shouldReadWhatIsNotUtf8ByteForByte() {
    var bytes = Bytes.of("Müller\r".getBytes(ISO_8859_1));

    var view = BytesView.of(bytes, "x-application/hl7-v2+er7");

    assertThat(view.text()).isEqualTo("Müller\r");
    assertThat(BytesView.mended(throughAForm("Möller\r"), bytes, "x-application/hl7-v2+er7"))
        .isEqualTo("Möller\r".getBytes(ISO_8859_1));
  }

  @Test
  void shouldTakeTheEncodingThatTheMediaTypeNames() {
    var windows = Charset.forName("windows-1252");
    var bytes = Bytes.of("5 €".getBytes(windows));

    assertThat(BytesView.of(bytes, "text/csv; charset=windows-1252").text()).isEqualTo("5 €");
  }

  @Test
  void shouldNotOfferTextThatAFormWouldChange() {
    assertThat(BytesView.of(Bytes.of("a\rb\nc".getBytes(UTF_8)), "text/plain").mendable())
        .as("mixed line ends")
        .isFalse();
    var binary = BytesView.of(Bytes.of(new byte[] {0, -1, 65}), "text/plain");
    assertThat(binary.text()).isNull();
    assertThat(binary.mendable()).isFalse();
  }

  @Test
  void shouldShowEveryByteInHexadecimal() {
    var bytes = Bytes.of("0123456789abcdefé".getBytes(UTF_8));

    var view = BytesView.of(bytes, "text/plain");

    assertThat(view.hex())
        .isEqualTo(
            """
            000000  30 31 32 33 34 35 36 37 38 39 61 62 63 64 65 66  0123456789abcdef
            000010  c3 a9                                            ··
            """);
    assertThat(BytesView.fromDigits(view.digits())).hasValue(bytes.array());
    assertThat(BytesView.fromDigits("0g")).isEmpty();
  }

  @Test
  void shouldSayWhenItShowsOnlyTheBeginning() {
    var view = BytesView.of(Bytes.of(new byte[100_000]), "text/plain");

    assertThat(view.whole()).isFalse();
    assertThat(view.mendable()).isFalse();
  }

  /** HTML, "constructing the entry list": a text area's lines end with CR LF. */
  private static String throughAForm(String text) {
    return text.replace("\r\n", "\n").replace('\r', '\n').replace("\n", "\r\n");
  }
}
