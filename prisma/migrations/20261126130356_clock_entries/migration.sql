-- CreateTable
CREATE TABLE "clock_entries" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "step_id" UUID,
    "load_id" UUID,
    "work_order_id" UUID,
    "note" TEXT NOT NULL DEFAULT '',
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "late_reason" TEXT,
    "entered_by" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "supersedes_id" UUID,
    "stands" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "clock_entries_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "clock_entries_supersedes_id_key" ON "clock_entries"("supersedes_id");

-- CreateIndex
CREATE INDEX "clock_entries_person_id_started_at_idx" ON "clock_entries"("person_id", "started_at");

-- CreateIndex
CREATE INDEX "clock_entries_step_id_idx" ON "clock_entries"("step_id");

-- CreateIndex
CREATE INDEX "clock_entries_work_order_id_idx" ON "clock_entries"("work_order_id");

ALTER TABLE "clock_entries" ADD CONSTRAINT "an entry ends after it began" CHECK ("ended_at" IS NULL OR "ended_at" > "started_at");
CREATE UNIQUE INDEX "a person has one clock running" ON "clock_entries" ("person_id") WHERE "ended_at" IS NULL AND "stands";
