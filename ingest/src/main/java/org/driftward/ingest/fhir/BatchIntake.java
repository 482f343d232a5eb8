package org.driftward.ingest.fhir;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.function.Predicate;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.fhir.FhirIntake.Result;

/**
 * One batch, entry by entry: what can be kept is kept, and each of the rest is told why not. Bed
 * moves come first, wherever they stand, because assessments of the same batch need them. What was
 * refused is kept once, as the whole batch with the faults of all its entries.
 */
final class BatchIntake {

  private final FhirIntake intake;
  private final Received received;
  private final Predicate<String> sees;
  private final HouseAfter house;

  BatchIntake(FhirIntake intake, Received received, Predicate<String> sees) {
    this.intake = intake;
    this.received = received;
    this.sees = sees;
    this.house = intake.house();
  }

  Result take(List<Converted> entries) {
    var answers = new EntryAnswer[entries.size()];
    for (int i = 0; i < answers.length; i++) {
      if (!entries.get(i).changes.isEmpty()) {
        answers[i] = move(entries.get(i));
      }
    }
    var good = new ArrayList<Integer>();
    for (int i = 0; i < answers.length; i++) {
      if (answers[i] == null) {
        answers[i] = check(entries.get(i));
        if (!answers[i].refused()) {
          good.add(i);
        }
      }
    }
    send(entries, good, answers);
    keepWhatWasNot(answers);
    return new Result.Each(List.of(answers));
  }

  private EntryAnswer move(Converted entry) {
    var checked = check(entry);
    if (checked.refused()) {
      return checked;
    }
    var refused = intake.move(entry, 0, received);
    return refused.isEmpty() ? checked : EntryAnswer.refused(refused);
  }

  private EntryAnswer check(Converted entry) {
    if (!intake.seen(entry, sees)) {
      return EntryAnswer.otherWard();
    }
    var faults = intake.faults(entry, house);
    return faults.isEmpty() ? EntryAnswer.kept(entry) : EntryAnswer.refused(faults);
  }

  /** All that is good at once: one wait for Kafka, however long the batch. */
  private void send(List<Converted> entries, List<Integer> good, EntryAnswer[] answers) {
    var together = new Converted();
    var sent = new HashSet<String>();
    for (int i : good) {
      var entry = entries.get(i);
      // The same twice in one batch is a repetition, which is no fault.
      if (entry.assessments.stream().allMatch(each -> sent.add(each.id() + each.revision()))) {
        together.addAll(entry);
      }
    }
    if (intake.send(together, received).isEmpty()) {
      return;
    }
    // The house has changed meanwhile, and one refused all: ask for each apart.
    for (int i : good) {
      var refused = intake.send(entries.get(i), received);
      if (!refused.isEmpty()) {
        answers[i] = EntryAnswer.refused(refused);
      }
    }
  }

  private void keepWhatWasNot(EntryAnswer[] answers) {
    List<Fault> faults =
        Arrays.stream(answers).flatMap(answer -> answer.faults().stream()).distinct().toList();
    if (!faults.isEmpty()) {
      intake.refuse(received, faults);
    }
  }
}
