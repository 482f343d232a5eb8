package org.driftward.ingest.web;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.core.MediaType;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Gate.Bearer;

/** The signed-in account that sends a request, and the wards it sees. */
@RequestScoped
public class Sender {

  private final SecurityIdentity identity;

  public Sender(SecurityIdentity identity) {
    this.identity = identity;
  }

  public String account() {
    return identity.getPrincipal().getName();
  }

  public boolean sees(String ward) {
    return scope().sees(ward);
  }

  public WardScope scope() {
    WardScope scope = identity.getAttribute(WardScope.ATTRIBUTE);
    return scope == null ? WardScope.NONE : scope;
  }

  public Bearer bearer() {
    return new Bearer(account(), scope());
  }

  public Received received(String target, byte[] body) {
    return received(Source.BEDSIDE, target, MediaType.APPLICATION_JSON, body);
  }

  public Received received(Source source, String target, String contentType, byte[] body) {
    return new Received("http/" + account(), source, target, contentType, body);
  }
}
