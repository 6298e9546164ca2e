-- AlterTable
ALTER TABLE "sign_offs" ADD COLUMN     "countersigns_id" UUID;

-- CreateTable
CREATE TABLE "training_items" (
    "id" UUID NOT NULL,
    "title" TEXT NOT NULL,
    "every_months" INTEGER,
    "processes" TEXT[],
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "training_items_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "training_records" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "item_id" UUID,
    "title" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "given_by" TEXT NOT NULL,
    "held_on" DATE NOT NULL,
    "minutes" INTEGER NOT NULL,
    "result" TEXT NOT NULL,
    "due_on" DATE,
    "paper_hash" TEXT,
    "paper_name" TEXT,
    "supersedes_id" UUID,
    "reason" TEXT NOT NULL DEFAULT '',
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "training_records_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "inspection_lists" (
    "process" TEXT NOT NULL,
    "person_ids" UUID[],
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "inspection_lists_pkey" PRIMARY KEY ("process")
);

-- CreateTable
CREATE TABLE "shift_patterns" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "week" JSONB NOT NULL,
    "retired_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "shift_patterns_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shift_assignments" (
    "id" UUID NOT NULL,
    "person_id" UUID,
    "pattern_id" UUID NOT NULL,
    "valid_from" DATE NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "shift_assignments_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shop_holidays" (
    "id" UUID NOT NULL,
    "on" DATE NOT NULL,
    "part" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "shop_holidays_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "absences" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "from" DATE NOT NULL,
    "from_half" TEXT NOT NULL,
    "to" DATE NOT NULL,
    "to_half" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "cancelled_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "absences_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "training_items_title_key" ON "training_items"("title");

-- CreateIndex
CREATE UNIQUE INDEX "training_records_supersedes_id_key" ON "training_records"("supersedes_id");

-- CreateIndex
CREATE INDEX "training_records_person_id_held_on_idx" ON "training_records"("person_id", "held_on");

-- CreateIndex
CREATE INDEX "training_records_entry_id_idx" ON "training_records"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "shift_patterns_name_key" ON "shift_patterns"("name");

-- CreateIndex
CREATE INDEX "shift_assignments_person_id_valid_from_idx" ON "shift_assignments"("person_id", "valid_from");

-- CreateIndex
CREATE INDEX "shop_holidays_on_idx" ON "shop_holidays"("on");

-- CreateIndex
CREATE INDEX "absences_person_id_from_idx" ON "absences"("person_id", "from");

-- CreateIndex
CREATE UNIQUE INDEX "sign_offs_countersigns_id_key" ON "sign_offs"("countersigns_id");

-- AddForeignKey
ALTER TABLE "training_records" ADD CONSTRAINT "training_records_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "training_records" ADD CONSTRAINT "training_records_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "training_items"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "shift_assignments" ADD CONSTRAINT "shift_assignments_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "shift_assignments" ADD CONSTRAINT "shift_assignments_pattern_id_fkey" FOREIGN KEY ("pattern_id") REFERENCES "shift_patterns"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "absences" ADD CONSTRAINT "absences_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "training_records" ADD CONSTRAINT "training_records_supersedes_id_fkey" FOREIGN KEY ("supersedes_id") REFERENCES "training_records"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- What the schema cannot draw
ALTER TABLE "training_items" ADD CONSTRAINT "a training comes again after at least one month" CHECK ("every_months" > 0);
ALTER TABLE "training_records" ADD CONSTRAINT "a training is initial, recurrent or on the job"
  CHECK ("kind" IN ('initial', 'recurrent', 'on-the-job'));
ALTER TABLE "training_records" ADD CONSTRAINT "a training was passed, failed or attended"
  CHECK ("result" IN ('passed', 'failed', 'attended'));
ALTER TABLE "training_records" ADD CONSTRAINT "a training takes time and is due after it was held"
  CHECK ("minutes" > 0 AND "held_on" <= "due_on" IS NOT FALSE);
ALTER TABLE "training_records" ADD CONSTRAINT "a corrected training says what it supersedes and why"
  CHECK (("supersedes_id" IS NULL) = ("reason" = ''));
ALTER TABLE "shop_holidays" ADD CONSTRAINT "a holiday is a whole day or half of one"
  CHECK ("part" IN ('whole', 'morning', 'afternoon'));
ALTER TABLE "absences" ADD CONSTRAINT "an absence is a holiday, sickness, training or other"
  CHECK ("kind" IN ('holiday', 'sick', 'training', 'other'));
ALTER TABLE "absences" ADD CONSTRAINT "an absence ends no earlier than it begins"
  CHECK ("from_half" IN ('morning', 'afternoon') AND "to_half" IN ('morning', 'afternoon')
    AND ("from", "from_half" = 'afternoon') <= ("to", "to_half" = 'afternoon'));
ALTER TABLE "sign_offs" ADD CONSTRAINT "a sign-off does not countersign itself" CHECK ("countersigns_id" IS DISTINCT FROM "id");

CREATE UNIQUE INDEX "a day is a shop holiday once" ON "shop_holidays" ("on") WHERE "removed_at" IS NULL;
CREATE UNIQUE INDEX "a person changes shifts once a day" ON "shift_assignments" ("person_id", "valid_from") NULLS NOT DISTINCT
  WHERE "ended_at" IS NULL;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "training_records" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "training_records" FROM hubwright_server;
GRANT SELECT ON "training_records" TO hubwright_retention;
