-- Other systems read single findings and scores by a short name that begins with this digest of the
-- encounter and the assessment; see PublishedId. It names, it protects nothing.
CREATE INDEX assessment_by_moment
    ON dashboard.assessment (md5(encounter || chr(10) || assessment));
