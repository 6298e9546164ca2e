-- AlterTable
ALTER TABLE "field_signatures" ADD COLUMN     "countersigns_id" UUID;
