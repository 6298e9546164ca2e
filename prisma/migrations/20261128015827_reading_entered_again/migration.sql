-- DropIndex
DROP INDEX "aircraft_readings_aircraft_id_meter_read_on_hours_tenths_key";

-- AlterTable
ALTER TABLE "aircraft_readings" ADD COLUMN     "again" INTEGER NOT NULL DEFAULT 0;

-- CreateIndex
CREATE UNIQUE INDEX "aircraft_readings_aircraft_id_meter_read_on_hours_tenths_ag_key" ON "aircraft_readings"("aircraft_id", "meter", "read_on", "hours_tenths", "again");
