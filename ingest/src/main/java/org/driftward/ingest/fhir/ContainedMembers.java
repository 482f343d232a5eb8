package org.driftward.ingest.fhir;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;

/**
 * The members that a panel contains. A contained resource often leaves out what its container says;
 * such a member has the panel's patient, stay, time, status, performer and site.
 */
final class ContainedMembers {

  private ContainedMembers() {}

  /**
   * @param index of the member among the contained resources
   * @param observation a copy that stands by itself
   */
  record Member(int index, Observation observation) {}

  static List<Member> of(Observation panel) {
    var meant = new HashSet<String>();
    panel.getHasMember().stream().map(Reference::getReference).forEach(meant::add);
    var members = new ArrayList<Member>();
    var contained = panel.getContained();
    for (int i = 0; i < contained.size(); i++) {
      var id = contained.get(i).getIdElement().getIdPart();
      if (contained.get(i) instanceof Observation member
          && id != null
          && meant.contains(id.startsWith("#") ? id : "#" + id)) {
        members.add(new Member(i, standing(member, panel, id.replace("#", ""))));
      }
    }
    return members;
  }

  private static Observation standing(Observation contained, Observation panel, String id) {
    var member = contained.copy();
    if (!member.hasStatus()) {
      member.setStatus(panel.getStatus());
    }
    if (!member.hasSubject()) {
      member.setSubject(panel.getSubject());
    }
    if (!member.hasEncounter()) {
      member.setEncounter(panel.getEncounter());
    }
    if (!member.hasEffective()) {
      member.setEffective(panel.getEffective());
    }
    if (!member.hasIssued()) {
      member.setIssued(panel.getIssued());
    }
    if (!member.hasPerformer()) {
      member.setPerformer(panel.getPerformer());
    }
    if (!member.hasMeta()) {
      member.setMeta(panel.getMeta());
    }
    identify(member, panel, id);
    return member;
  }

  /** A contained id means something only together with its container. */
  private static void identify(Observation member, Observation panel, String id) {
    if (Condition.deciding(member.getIdentifier()).isPresent()) {
      return;
    }
    member.setId((String) null);
    Condition.deciding(panel.getIdentifier())
        .ifPresentOrElse(
            own ->
                member.setIdentifier(
                    List.of(
                        new Identifier()
                            .setSystem(own.getSystem())
                            .setValue(own.getValue() + "#" + id))),
            () -> {
              var container = panel.getIdElement().getIdPart();
              if (container != null) {
                member.setId(container + "#" + id);
              }
            });
  }
}
