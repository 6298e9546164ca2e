-- AlterTable
ALTER TABLE "governor_runs" ADD COLUMN     "accepted" JSONB,
ADD COLUMN     "supervisor_id" UUID;

-- AlterTable
ALTER TABLE "instruments" ADD COLUMN     "more_doubts" JSONB NOT NULL DEFAULT '[]';
