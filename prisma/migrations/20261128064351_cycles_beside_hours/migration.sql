-- AlterTable
ALTER TABLE "aircraft_intervals" ADD COLUMN     "cycles_meter" TEXT,
ADD COLUMN     "from_cycles" INTEGER,
ADD COLUMN     "to_cycles" INTEGER;
