-- AlterTable
ALTER TABLE "route_steps" ADD COLUMN     "bake" JSONB;

-- AlterTable
ALTER TABLE "traveler_steps" ADD COLUMN     "bake" JSONB;
