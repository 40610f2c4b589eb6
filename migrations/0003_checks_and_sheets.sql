CREATE TABLE "checks" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"calculator" text NOT NULL,
	"inputs" text NOT NULL,
	"output" text NOT NULL,
	"held_to" text NOT NULL,
	"system" integer,
	"shipped" text DEFAULT '' NOT NULL,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "checks_by_build" ON "checks" ("build");
--> statement-breakpoint
CREATE TABLE "measuring_sheets" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"quantity" text NOT NULL,
	"part" integer,
	"job" integer,
	"system" integer,
	"places" text NOT NULL,
	"readings" text NOT NULL,
	"unit" text NOT NULL,
	"instrument" text DEFAULT '' NOT NULL,
	"resolution" real,
	"uncertainty" real,
	"expansion_ppm" real,
	"limits" text NOT NULL,
	"less" integer,
	"clearance" text NOT NULL,
	"fit" text,
	"before_gate" integer DEFAULT true NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "measuring_sheets_by_build" ON "measuring_sheets" ("build");
--> statement-breakpoint
CREATE TABLE "saved_cases" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"title" text NOT NULL,
	"calculator" text NOT NULL,
	"inputs" text NOT NULL,
	"units" text DEFAULT '{}' NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "saved_cases_by_build" ON "saved_cases" ("build");
--> statement-breakpoint
CREATE TABLE "targets" (
	"id" integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	"build" integer,
	"revision" integer DEFAULT 1 NOT NULL,
	"gone" integer DEFAULT false NOT NULL,
	"retired_on" text,
	"name" text NOT NULL,
	"value" text NOT NULL,
	"unit" text DEFAULT '' NOT NULL,
	"source" text DEFAULT '' NOT NULL,
	"note" text DEFAULT '' NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX "targets_by_build" ON "targets" ("build");
--> statement-breakpoint
ALTER TABLE "parts" ADD "kind" text DEFAULT '' NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "thread" text DEFAULT '' NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "bolt_class" text DEFAULT '' NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "stages" text DEFAULT '[]' NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "pattern" text DEFAULT 'star' NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "rows" integer DEFAULT 2 NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "bolt_order" text DEFAULT '[]' NOT NULL;
--> statement-breakpoint
ALTER TABLE "bolt_groups" ADD "source_kind" text DEFAULT 'unknown' NOT NULL;
