-- Looking back asks the journal by time, and for what happened in the hospital.
CREATE INDEX journal_by_time ON alerts.journal (at);
CREATE INDEX journal_hospital_events ON alerts.journal (sequence)
  WHERE subject LIKE 'audit-event/%';
