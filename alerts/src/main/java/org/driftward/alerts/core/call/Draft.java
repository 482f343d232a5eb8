package org.driftward.alerts.core.call;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.Ending;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Signs;
import org.driftward.alerts.contract.Call.Transfer;
import org.driftward.alerts.contract.Call.Treatment;
import org.jspecify.annotations.Nullable;

/** The next version of a call while one entry is being made. */
final class Draft {

  private final Call before;
  final List<Moment> moments;
  final List<Treatment> treatments;
  final List<Transfer> transfers;
  @Nullable Caller caller;
  Set<String> present;
  @Nullable String lead;
  private @Nullable String leadName;
  @Nullable Ending ending;

  Draft(Call before) {
    this.before = before;
    this.moments = new ArrayList<>(before.moments());
    this.treatments = new ArrayList<>(before.treatments());
    this.transfers = new ArrayList<>(before.transfers());
    this.caller = before.caller();
    this.present = before.present();
    this.lead = before.lead();
    this.leadName = before.leadName();
    this.ending = before.ending();
  }

  void reached(Moment moment) {
    moments.removeIf(other -> other.step() == moment.step());
    moments.add(moment);
    moments.sort(Comparator.comparing(Moment::at).thenComparing(Moment::step));
  }

  void ledBy(String account, String name) {
    lead = account;
    leadName = name;
  }

  Call call() {
    return call(before.version() + 1, List.of());
  }

  Call unchanged(List<Signs> signs) {
    return call(before.version(), signs);
  }

  private Call call(long version, List<Signs> signs) {
    return new Call(
        before.episode(),
        before.encounter(),
        before.ward(),
        before.bed(),
        version,
        before.firstTrigger(),
        before.triggers(),
        before.ceiling(),
        before.callsBefore(),
        caller,
        moments,
        signs,
        present,
        treatments,
        lead,
        leadName,
        transfers,
        ending);
  }
}
