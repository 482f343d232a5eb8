-- What alerts had set aside is kept with everybody else's.
INSERT INTO ground.quarantine (place, part, means, reason, payload, first_at, told_until)
SELECT topic || '/' || partition || '/' || "offset", 'alerts-reader',
  'What a record said of somebody has raised no alarm.', reason, payload, at, at
FROM alerts.quarantine;
DROP TABLE alerts.quarantine;
