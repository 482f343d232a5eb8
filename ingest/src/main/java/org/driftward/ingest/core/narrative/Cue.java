package org.driftward.ingest.core.narrative;

import org.driftward.ingest.contract.Word;

/** What a word does to the words around it; the words are in the grammar file. */
enum Cue implements Word {
  /** Denies what follows: "no", "denies". */
  NEGATION,
  /** Takes back a word of value: "not". */
  NOT,
  /** Denies what came before: "none", "nil". */
  DENIAL,
  /** After a question: "no". */
  ANSWER_NO,
  ANSWER_YES,
  /** "Well done": what was asked was right. */
  PRAISE,
  /** "Sorry", "I mean": what follows replaces. */
  CORRECTION,
  /** "Scratch that": what came before is void. */
  VOID,
  /** Joins a list. */
  AND,
  OR,
  /** Turns: "but". */
  TURN,
  /** From here on it is now. */
  NOW,
  /** Not now: "yesterday". */
  PAST,
  CONDITION,
  TARGET,
  PLAN,
  OTHER_PERSON,
  /** Back to the patient. */
  PATIENT,
  /** "He": begins what is said of the patient, or of whoever was spoken of. */
  SUBJECT,
  QUESTION,
  HEDGE,
  /** Before a number: "under", "about". */
  LIMIT,
  /** Between two numbers: "to". */
  RANGE,
  /** Takes the number that follows: "bed", the name of a scale we do not keep. */
  NUMBERED,
  /** After "no": takes the denial away ("no new", "no change in"). */
  NO_DENIAL,
  /** All places of the finding. */
  EVERYWHERE,
  /** The place spoken of before: "there". */
  THERE,
  /** Singular part of a pair: without a side nothing can be said of it. */
  ONE_OF_PAIR,
  /** Means nothing here; keeps its words from meaning something. */
  NOTHING
}
