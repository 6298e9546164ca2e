-- AlterTable
ALTER TABLE "installations" ADD COLUMN     "ends_unseen" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "struck_readings" (
    "reading_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "struck_readings_pkey" PRIMARY KEY ("reading_id")
);

-- CreateTable
CREATE TABLE "meter_changes" (
    "id" UUID NOT NULL,
    "supersedes_id" UUID,
    "aircraft_id" UUID NOT NULL,
    "meter" TEXT NOT NULL,
    "changed_on" DATE NOT NULL,
    "old_tenths" INTEGER,
    "new_tenths" INTEGER NOT NULL,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "basis" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "meter_changes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "aircraft_intervals" (
    "id" UUID NOT NULL,
    "interval_id" UUID NOT NULL,
    "supersedes_id" UUID,
    "item_id" UUID NOT NULL,
    "aircraft_id" UUID NOT NULL,
    "position" TEXT NOT NULL,
    "meter" TEXT NOT NULL,
    "from_date" DATE NOT NULL,
    "from_tenths" INTEGER,
    "to_date" DATE,
    "to_tenths" INTEGER,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "basis" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "aircraft_intervals_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "a meter change is superseded once" ON "meter_changes"("supersedes_id");

-- CreateIndex
CREATE INDEX "meter_changes_aircraft_id_meter_idx" ON "meter_changes"("aircraft_id", "meter");

-- CreateIndex
CREATE UNIQUE INDEX "an interval is superseded once" ON "aircraft_intervals"("supersedes_id");

-- CreateIndex
CREATE INDEX "aircraft_intervals_item_id_idx" ON "aircraft_intervals"("item_id");

-- CreateIndex
CREATE INDEX "aircraft_intervals_aircraft_id_idx" ON "aircraft_intervals"("aircraft_id");

-- CreateIndex
CREATE INDEX "aircraft_intervals_interval_id_idx" ON "aircraft_intervals"("interval_id");

-- AddForeignKey
ALTER TABLE "struck_readings" ADD CONSTRAINT "struck_readings_reading_id_fkey" FOREIGN KEY ("reading_id") REFERENCES "aircraft_readings"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "meter_changes" ADD CONSTRAINT "meter_changes_aircraft_id_fkey" FOREIGN KEY ("aircraft_id") REFERENCES "aircraft"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "meter_changes" ADD CONSTRAINT "meter_changes_supersedes_id_fkey" FOREIGN KEY ("supersedes_id") REFERENCES "meter_changes"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft_intervals" ADD CONSTRAINT "aircraft_intervals_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft_intervals" ADD CONSTRAINT "aircraft_intervals_aircraft_id_fkey" FOREIGN KEY ("aircraft_id") REFERENCES "aircraft"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft_intervals" ADD CONSTRAINT "aircraft_intervals_supersedes_id_fkey" FOREIGN KEY ("supersedes_id") REFERENCES "aircraft_intervals"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- What is only added.
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "aircraft_intervals" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "aircraft_intervals" FROM hubwright_server;
GRANT SELECT ON "aircraft_intervals" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "struck_readings" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "struck_readings" FROM hubwright_server;
GRANT SELECT ON "struck_readings" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "meter_changes" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "meter_changes" FROM hubwright_server;
GRANT SELECT ON "meter_changes" TO hubwright_retention;

ALTER TABLE "aircraft_intervals" ADD CONSTRAINT "an interval ends after it begins" CHECK ("to_date" IS NULL OR "to_date" >= "from_date");
ALTER TABLE "aircraft_intervals" ADD CONSTRAINT "a figure at removal has its day" CHECK ("to_tenths" IS NULL OR "to_date" IS NOT NULL);
