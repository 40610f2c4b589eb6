CREATE TABLE "about" (
	"key" text PRIMARY KEY NOT NULL,
	"value" text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "imports" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"act" integer NOT NULL,
	"build" integer NOT NULL,
	"file_name" text NOT NULL,
	"sha256" text NOT NULL,
	"bytes" blob NOT NULL,
	"mapping" text NOT NULL,
	"answers" text NOT NULL,
	"report" text NOT NULL,
	"summary" text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "imports_by_hash" ON "imports" ("build","sha256");
--> statement-breakpoint
CREATE TABLE "mappings" (
	"fingerprint" text PRIMARY KEY NOT NULL,
	"mapping" text NOT NULL,
	"answers" text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "acts" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"kind" text NOT NULL,
	"label" text NOT NULL,
	"recorded_at" text NOT NULL,
	"author" text NOT NULL,
	"idempotency_key" text NOT NULL,
	"target" integer,
	"undone" integer DEFAULT false NOT NULL,
	"carried_by" integer,
	"result" text NOT NULL,
	CONSTRAINT "acts_kind" CHECK("acts"."kind" IN ('act', 'undo', 'redo'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX "acts_by_key" ON "acts" ("idempotency_key");
--> statement-breakpoint
CREATE INDEX "acts_by_kind" ON "acts" ("kind","undone","id");
--> statement-breakpoint
CREATE TABLE "balances" (
	"part" integer NOT NULL,
	"line" integer NOT NULL,
	"lot" integer NOT NULL,
	"subject_kind" text NOT NULL,
	"subject" integer NOT NULL,
	"account" text NOT NULL,
	"build" integer NOT NULL,
	"order_id" integer NOT NULL,
	"quantity_milli" integer NOT NULL,
	"amount_minor" integer NOT NULL,
	"last_day" text NOT NULL,
	PRIMARY KEY("part", "line", "lot", "subject_kind", "subject", "account")
) STRICT;
--> statement-breakpoint
CREATE INDEX "balances_by_order" ON "balances" ("order_id");
--> statement-breakpoint
CREATE INDEX "balances_by_subject" ON "balances" ("subject_kind","subject");
--> statement-breakpoint
CREATE INDEX "balances_by_build" ON "balances" ("build","account");
--> statement-breakpoint
CREATE TABLE "entries" (
	"seq" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"act" integer NOT NULL,
	"kind" text NOT NULL,
	"on_day" text NOT NULL,
	"recorded_at" text NOT NULL,
	"build" integer NOT NULL,
	"part" integer,
	"order_id" integer,
	"line" integer,
	"lot" integer,
	"subject_kind" text,
	"subject" integer,
	"quantity_milli" integer,
	"amount_minor" integer,
	"currency" text,
	"note" text DEFAULT '' NOT NULL,
	"reverses" integer,
	"payload" text,
	CONSTRAINT "entries_day" CHECK(length("entries"."on_day") = 10 AND date("entries"."on_day") IS "entries"."on_day"),
	CONSTRAINT "entries_amount" CHECK(abs(coalesce("entries"."amount_minor", 0)) <= 9007199254740991),
	CONSTRAINT "entries_quantity" CHECK(abs(coalesce("entries"."quantity_milli", 0)) <= 9007199254740991)
) STRICT;
--> statement-breakpoint
CREATE INDEX "entries_by_act" ON "entries" ("act");
--> statement-breakpoint
CREATE INDEX "entries_by_part" ON "entries" ("part","seq");
--> statement-breakpoint
CREATE INDEX "entries_by_order" ON "entries" ("order_id","seq");
--> statement-breakpoint
CREATE INDEX "entries_by_subject" ON "entries" ("subject_kind","subject","seq");
--> statement-breakpoint
CREATE INDEX "entries_by_kind" ON "entries" ("kind","seq");
--> statement-breakpoint
CREATE INDEX "entries_by_day" ON "entries" ("build","on_day");
--> statement-breakpoint
CREATE UNIQUE INDEX "entries_reversed_once" ON "entries" ("reverses");
--> statement-breakpoint
CREATE TABLE "postings" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"entry" integer NOT NULL,
	"on_day" text NOT NULL,
	"build" integer NOT NULL,
	"account" text NOT NULL,
	"part" integer NOT NULL,
	"order_id" integer NOT NULL,
	"line" integer NOT NULL,
	"lot" integer NOT NULL,
	"subject_kind" text NOT NULL,
	"subject" integer NOT NULL,
	"quantity_milli" integer NOT NULL,
	"amount_minor" integer NOT NULL,
	FOREIGN KEY ("entry") REFERENCES "entries"("seq") ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX "postings_by_entry" ON "postings" ("entry");
--> statement-breakpoint
CREATE INDEX "postings_by_part" ON "postings" ("part","account","on_day");
--> statement-breakpoint
CREATE INDEX "postings_by_build" ON "postings" ("build","on_day");
--> statement-breakpoint
CREATE INDEX "postings_by_subject" ON "postings" ("subject_kind","subject","on_day");
--> statement-breakpoint
CREATE TABLE "taken_back" (
	"seq" integer PRIMARY KEY NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "order_lines" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"order_id" integer NOT NULL,
	"part" integer NOT NULL,
	"sort" integer DEFAULT 0 NOT NULL,
	"quantity_milli" integer NOT NULL,
	"each_e4" integer NOT NULL,
	"landed" text NOT NULL,
	"import_key" text
) STRICT;
--> statement-breakpoint
CREATE INDEX "order_lines_by_order" ON "order_lines" ("order_id");
--> statement-breakpoint
CREATE INDEX "order_lines_by_part" ON "order_lines" ("part");
--> statement-breakpoint
CREATE TABLE "orders" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"vendor" integer NOT NULL,
	"number" text DEFAULT '' NOT NULL,
	"ordered_on" text NOT NULL,
	"currency" text NOT NULL,
	"rate" text,
	"charges" text NOT NULL,
	"total_minor" integer NOT NULL,
	"total_base_minor" integer NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "orders_by_build" ON "orders" ("build");
--> statement-breakpoint
CREATE INDEX "orders_by_vendor" ON "orders" ("vendor");
--> statement-breakpoint
CREATE TABLE "lots" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"part" integer NOT NULL,
	"line" integer DEFAULT 0 NOT NULL,
	"source" text NOT NULL,
	"owner" text DEFAULT '' NOT NULL,
	"due_on" text,
	"bin" integer,
	"came_in_on" text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "lots_by_part" ON "lots" ("part");
--> statement-breakpoint
CREATE INDEX "lots_by_line" ON "lots" ("line");
--> statement-breakpoint
CREATE TABLE "parts" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"description" text NOT NULL,
	"part_number" text DEFAULT '' NOT NULL,
	"maker" text DEFAULT '' NOT NULL,
	"link" text DEFAULT '' NOT NULL,
	"unit" text DEFAULT 'each' NOT NULL,
	"system" integer,
	"phase" integer,
	"job" integer,
	"vendor" integer,
	"bin" integer,
	"priority" integer DEFAULT 3 NOT NULL,
	"needed_by" text,
	"optional" integer DEFAULT false NOT NULL,
	"needs_verification" integer DEFAULT false NOT NULL,
	"stretch_once" integer DEFAULT false NOT NULL,
	"attention" text DEFAULT '' NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	"facts" text DEFAULT '[]' NOT NULL,
	"folded" text DEFAULT '' NOT NULL,
	"import_key" text
) STRICT;
--> statement-breakpoint
CREATE INDEX "parts_by_build" ON "parts" ("build","system","phase");
--> statement-breakpoint
CREATE INDEX "parts_by_job" ON "parts" ("job");
--> statement-breakpoint
CREATE INDEX "parts_by_vendor" ON "parts" ("vendor");
--> statement-breakpoint
CREATE TABLE "positions" (
	"part" integer PRIMARY KEY NOT NULL,
	"build" integer NOT NULL,
	"need_milli" integer DEFAULT 0 NOT NULL,
	"estimate_each_e4" integer,
	"placed_milli" integer DEFAULT 0 NOT NULL,
	"acknowledged_milli" integer DEFAULT 0 NOT NULL,
	"back_ordered_milli" integer DEFAULT 0 NOT NULL,
	"in_transit_milli" integer DEFAULT 0 NOT NULL,
	"inspection_milli" integer DEFAULT 0 NOT NULL,
	"shelf_milli" integer DEFAULT 0 NOT NULL,
	"allocated_milli" integer DEFAULT 0 NOT NULL,
	"trial_milli" integer DEFAULT 0 NOT NULL,
	"fitted_milli" integer DEFAULT 0 NOT NULL,
	"snug_milli" integer DEFAULT 0 NOT NULL,
	"verified_milli" integer DEFAULT 0 NOT NULL,
	"rejected_milli" integer DEFAULT 0 NOT NULL,
	"lent_milli" integer DEFAULT 0 NOT NULL,
	"returned_unsettled_milli" integer DEFAULT 0 NOT NULL,
	"borrowed_milli" integer DEFAULT 0 NOT NULL,
	"borrowed_on_milli" integer DEFAULT 0 NOT NULL,
	"uncovered_milli" integer DEFAULT 0 NOT NULL,
	"quotes" integer DEFAULT 0 NOT NULL,
	"cost_minor" integer DEFAULT 0 NOT NULL,
	"loss_minor" integer DEFAULT 0 NOT NULL,
	"commitment_minor" integer DEFAULT 0 NOT NULL,
	"remaining_minor" integer DEFAULT 0 NOT NULL,
	"paid_minor" integer DEFAULT 0 NOT NULL,
	"vendor_owed_minor" integer DEFAULT 0 NOT NULL,
	"claims_minor" integer DEFAULT 0 NOT NULL,
	"deposits_minor" integer DEFAULT 0 NOT NULL,
	"exchange_minor" integer DEFAULT 0 NOT NULL,
	"promised_on" text,
	"back_ordered_on" text
) STRICT;
--> statement-breakpoint
CREATE INDEX "positions_by_build" ON "positions" ("build");
--> statement-breakpoint
CREATE TABLE "bins" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"place" text DEFAULT '' NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "bolt_groups" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"part" integer,
	"job" integer,
	"system" integer,
	"count" integer NOT NULL,
	"method" text NOT NULL,
	"torque_milli_nm" integer,
	"angle_deg" integer,
	"source" text DEFAULT '' NOT NULL,
	"sequence" text DEFAULT '' NOT NULL,
	"lubricant" text DEFAULT '' NOT NULL,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "budget_lines" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"system" integer,
	"phase" integer
) STRICT;
--> statement-breakpoint
CREATE TABLE "builds" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"car" text DEFAULT '' NOT NULL,
	"engine" text DEFAULT '' NOT NULL,
	"gate_name" text DEFAULT 'engine-in' NOT NULL,
	"started_on" text NOT NULL,
	"target_on" text,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "decisions" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"options" text DEFAULT '[]' NOT NULL,
	"owner" text DEFAULT '' NOT NULL,
	"needed_by" text,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "jobs" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"phase" integer,
	"system" integer,
	"sort" integer DEFAULT 0 NOT NULL,
	"minutes_guess" integer,
	"tools" text DEFAULT '[]' NOT NULL,
	"earlier" text DEFAULT '[]' NOT NULL,
	"before_gate" integer DEFAULT true NOT NULL,
	"needs_sign_off" integer DEFAULT false NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "jobs_by_build" ON "jobs" ("build","phase");
--> statement-breakpoint
CREATE TABLE "phases" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"sort" integer DEFAULT 0 NOT NULL,
	"gate" text DEFAULT '' NOT NULL,
	"planned_start" text,
	"planned_end" text
) STRICT;
--> statement-breakpoint
CREATE INDEX "phases_by_build" ON "phases" ("build");
--> statement-breakpoint
CREATE TABLE "rates" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"currency" text NOT NULL,
	"on_day" text NOT NULL,
	"rate" text NOT NULL,
	"source" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "rates_by_currency" ON "rates" ("currency","on_day");
--> statement-breakpoint
CREATE TABLE "saved_views" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"screen" text NOT NULL,
	"view" text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "systems" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"sort" integer DEFAULT 0 NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "systems_by_build" ON "systems" ("build");
--> statement-breakpoint
CREATE TABLE "tools" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"whereabouts" text DEFAULT '' NOT NULL,
	"due_on" text,
	"hire_minor" integer,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "vendors" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"site" text DEFAULT '' NOT NULL,
	"contact" text DEFAULT '' NOT NULL,
	"account" text DEFAULT '' NOT NULL,
	"currency" text,
	"lead_days" integer,
	"note" text DEFAULT '' NOT NULL
) STRICT;
