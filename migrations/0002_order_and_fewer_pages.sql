DROP INDEX "parts_by_build";
--> statement-breakpoint
CREATE INDEX "parts_in_order" ON "parts" ("build","gone","system","phase","id","retired_on");
--> statement-breakpoint
DROP INDEX "entries_by_order";
--> statement-breakpoint
DROP INDEX "entries_by_subject";
--> statement-breakpoint
DROP INDEX "entries_reversed_once";
--> statement-breakpoint
CREATE INDEX "entries_by_order" ON "entries" ("order_id","seq") WHERE "entries"."order_id" IS NOT NULL;
--> statement-breakpoint
CREATE INDEX "entries_by_subject" ON "entries" ("subject_kind","subject","seq") WHERE "entries"."subject" IS NOT NULL;
--> statement-breakpoint
CREATE UNIQUE INDEX "entries_reversed_once" ON "entries" ("reverses") WHERE "entries"."reverses" IS NOT NULL;
