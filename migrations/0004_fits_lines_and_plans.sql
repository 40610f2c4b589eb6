CREATE TABLE "baselines" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"on_day" text NOT NULL,
	"rows" text NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "baselines_by_build" ON "baselines" ("build");
--> statement-breakpoint
CREATE TABLE "bill_parts" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"item" text NOT NULL,
	"part" integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "bill_parts_by_build" ON "bill_parts" ("build");
--> statement-breakpoint
CREATE TABLE "calendar_days" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"on_day" text NOT NULL,
	"until_day" text,
	"person" integer,
	"windows" text DEFAULT '[]' NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "calendar_days_by_build" ON "calendar_days" ("build");
--> statement-breakpoint
CREATE TABLE "cash_counts" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"on_day" text NOT NULL,
	"cash_minor" integer NOT NULL,
	"floor_minor" integer NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "cash_counts_by_build" ON "cash_counts" ("build");
--> statement-breakpoint
CREATE TABLE "connections" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"one" text NOT NULL,
	"other" text NOT NULL,
	"role" text DEFAULT 'fluid' NOT NULL,
	"medium" text DEFAULT '' NOT NULL,
	"pressure_bar" real,
	"accepted" text,
	"adapter" text,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "connections_by_build" ON "connections" ("build");
--> statement-breakpoint
CREATE TABLE "declared_fits" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"shipped" text DEFAULT '' NOT NULL,
	"rule" text,
	"things" text DEFAULT '{}' NOT NULL,
	"fit_values" text DEFAULT '[]' NOT NULL,
	"accepted" text,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "declared_fits_by_build" ON "declared_fits" ("build");
--> statement-breakpoint
CREATE TABLE "hose_lengths" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"hose" text NOT NULL,
	"bore_mm" real,
	"length_mm" integer NOT NULL,
	"count" integer NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "hose_lines" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"from_port" integer,
	"to_port" integer,
	"system" integer,
	"job" integer,
	"definition" text NOT NULL,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "hose_lines_by_build" ON "hose_lines" ("build");
--> statement-breakpoint
CREATE TABLE "incomes" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"amount_minor" integer NOT NULL,
	"every" text NOT NULL,
	"from_day" text NOT NULL,
	"until_day" text,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "incomes_by_build" ON "incomes" ("build");
--> statement-breakpoint
CREATE TABLE "offers" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"part" integer NOT NULL,
	"vendor" integer NOT NULL,
	"from_milli" integer NOT NULL,
	"each_e4" integer NOT NULL,
	"currency" text NOT NULL,
	"until_day" text,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "offers_by_build" ON "offers" ("build");
--> statement-breakpoint
CREATE TABLE "people" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"windows" text DEFAULT '[]' NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE "ports" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"part" integer,
	"place" text DEFAULT '' NOT NULL,
	"role" text DEFAULT 'fluid' NOT NULL,
	"medium" text DEFAULT '' NOT NULL,
	"designation" text NOT NULL,
	"sort" integer DEFAULT 0 NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "ports_by_build" ON "ports" ("build");
--> statement-breakpoint
CREATE INDEX "ports_by_part" ON "ports" ("part");
--> statement-breakpoint
CREATE TABLE "variants" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"changes" text DEFAULT '[]' NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "variants_by_build" ON "variants" ("build");
--> statement-breakpoint
ALTER TABLE "jobs" ADD "minutes_low" integer;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "minutes_high" integer;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "lags" text DEFAULT '[]' NOT NULL;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "not_before" text;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "one_sitting" integer DEFAULT false NOT NULL;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "hands" integer DEFAULT true NOT NULL;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "person" integer;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "place" text DEFAULT '' NOT NULL;
--> statement-breakpoint
ALTER TABLE "jobs" ADD "consumables" text DEFAULT '' NOT NULL;
--> statement-breakpoint
ALTER TABLE "vendors" ADD "shipping_minor" integer;
--> statement-breakpoint
ALTER TABLE "vendors" ADD "free_from_minor" integer;
