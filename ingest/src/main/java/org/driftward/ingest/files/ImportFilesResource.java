package org.driftward.ingest.files;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.FileImport.RejectedRow;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.core.files.Column;
import org.driftward.ingest.files.MappingText.NotAMappingException;
import org.driftward.ingest.store.FileMappings;
import org.driftward.ingest.store.Imports;
import org.driftward.ingest.web.Sender;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What belongs to imports beside the files: our header, mappings of other headers, bad rows. */
@Path("/api/imports")
@ServedBy(Role.INGEST)
@RolesAllowed({AccountRole.INTEGRATION, AccountRole.ADMIN})
@Tag(name = "intake")
public class ImportFilesResource {

  private final Imports imports;
  private final FileMappings mappings;
  private final Catalogue catalogue;
  private final ObjectMapper json;
  private final Sender sender;

  ImportFilesResource(
      Imports imports,
      FileMappings mappings,
      Catalogue catalogue,
      ObjectMapper json,
      Sender sender) {
    this.imports = imports;
    this.mappings = mappings;
    this.catalogue = catalogue;
    this.json = json;
    this.sender = sender;
  }

  @GET
  @Path("/template")
  @Produces(ImportResource.CSV)
  @Operation(summary = "Our header", description = "Leave out the columns that you do not need")
  public String template() throws IOException {
    var out = new StringBuilder();
    try (var printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
      printer.printRecord(Column.header(catalogue));
    }
    return out.toString();
  }

  @GET
  @Path("/{id}/rejected")
  @Blocking
  @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
  @Operation(summary = "The rows that were refused, with their lines and every reason")
  public Response rejected(@PathParam("id") String id) {
    require(id);
    StreamingOutput body = out -> writeJson(id, out);
    return Response.ok(body, MediaType.APPLICATION_JSON).build();
  }

  @GET
  @Path("/{id}/rejected")
  @Blocking
  @Produces(ImportResource.CSV)
  public Response rejectedAsCsv(@PathParam("id") String id) {
    require(id);
    StreamingOutput body = out -> writeCsv(id, out);
    return Response.ok(body, ImportResource.CSV)
        .header("Content-Disposition", "attachment; filename=\"rejected.csv\"")
        .build();
  }

  @GET
  @Path("/mappings")
  @Blocking
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(summary = "Names of the mappings")
  public List<String> names() {
    return mappings.names();
  }

  @GET
  @Path("/mappings/{name}")
  @Blocking
  @Produces(MediaType.TEXT_PLAIN)
  @Operation(summary = "How files with a foreign header are read, as it was written")
  public String mapping(@PathParam("name") String name) {
    return mappings.find(name).orElseThrow(NotFoundException::new);
  }

  @PUT
  @Path("/mappings/{name}")
  @Blocking
  @Consumes(MediaType.WILDCARD)
  @Produces(Problem.MEDIA_TYPE)
  @Operation(
      summary = "Say how files with a foreign header are read",
      description = "YAML or JSON: delimiter, columns, ignore, values, zone, time, decimalComma")
  @APIResponse(responseCode = "204", description = "It counts for files that come from now on")
  @APIResponse(responseCode = "400", description = "It is no mapping, and why")
  public Response putMapping(@PathParam("name") String name, byte[] body) {
    var text = new String(body, StandardCharsets.UTF_8);
    try {
      MappingText.read(text);
    } catch (NotAMappingException e) {
      var fault = new Fault("", "malformed-mapping", String.valueOf(e.getMessage()));
      var problem =
          new Problem("/problems/refused-input", "This is no mapping", 400, null, List.of(fault));
      return Response.status(400).entity(problem).build();
    }
    mappings.put(name, text, sender.account());
    return Response.noContent().build();
  }

  private void require(String id) {
    var sight = new Sight(sender.account(), sender.scope());
    if (imports.find(id, sight).isEmpty()) {
      throw new NotFoundException();
    }
  }

  private void writeJson(String id, OutputStream out) throws IOException {
    try (var array = json.writer().writeValues(out).init(true)) {
      imports.eachRejected(
          id,
          row -> {
            try {
              array.write(row);
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          });
    }
  }

  private void writeCsv(String id, OutputStream out) throws IOException {
    try (var writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        var printer = new CSVPrinter(writer, CSVFormat.RFC4180)) {
      printer.printRecord("line", "rules", "reasons", "row");
      imports.eachRejected(id, row -> print(printer, row));
    }
  }

  private static void print(CSVPrinter printer, RejectedRow row) {
    var rules = row.faults().stream().map(Fault::rule).distinct();
    var reasons = row.faults().stream().map(Fault::detail);
    try {
      printer.printRecord(
          row.line(),
          rules.collect(Collectors.joining(" ")),
          reasons.collect(Collectors.joining("; ")),
          row.row());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
