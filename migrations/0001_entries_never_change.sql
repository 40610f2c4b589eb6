-- The journal is only ever added to: a mistake is answered by an entry that takes it back.
CREATE TRIGGER entries_never_change BEFORE UPDATE ON entries BEGIN SELECT raise(ABORT, 'entries are append-only'); END;
--> statement-breakpoint
CREATE TRIGGER entries_never_go BEFORE DELETE ON entries BEGIN SELECT raise(ABORT, 'entries are append-only'); END;
--> statement-breakpoint
CREATE TRIGGER postings_never_change BEFORE UPDATE ON postings BEGIN SELECT raise(ABORT, 'postings are append-only'); END;
--> statement-breakpoint
CREATE TRIGGER postings_never_go BEFORE DELETE ON postings BEGIN SELECT raise(ABORT, 'postings are append-only'); END;
--> statement-breakpoint
CREATE TRIGGER acts_never_go BEFORE DELETE ON acts BEGIN SELECT raise(ABORT, 'acts are append-only'); END;
--> statement-breakpoint
CREATE TRIGGER acts_only_change_standing BEFORE UPDATE OF id, kind, label, recorded_at, author, idempotency_key, target, result ON acts
BEGIN SELECT raise(ABORT, 'acts are append-only'); END;
