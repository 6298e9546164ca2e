-- AlterTable
ALTER TABLE "kit_lines" ADD COLUMN     "asked_later_at" TIMESTAMPTZ(3);
