-- AlterTable
ALTER TABLE "tbo_rules" ADD COLUMN     "serial_from" TEXT,
ADD COLUMN     "serial_to" TEXT;
