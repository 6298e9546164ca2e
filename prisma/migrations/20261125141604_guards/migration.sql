-- What Prisma's schema cannot draw: rules with sentences for names, rows that are only added, indexes over open things,
-- and what the running server may touch. A name is at most 63 bytes; the server turns it into a problem for the reader.

-- Stock
ALTER TABLE "balances" ADD CONSTRAINT "a place cannot hold less than nothing" CHECK ("on_hand" >= 0);
ALTER TABLE "movements" ADD CONSTRAINT "a movement moves at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "movements" ADD CONSTRAINT "a movement ends at another place than it began"
  CHECK (("from_kind", "from_ref") IS DISTINCT FROM ("to_kind", "to_ref"));
ALTER TABLE "movements" ADD CONSTRAINT "a movement does not reverse itself" CHECK ("reverses_id" IS DISTINCT FROM "id");
ALTER TABLE "reservations" ADD CONSTRAINT "a reservation holds at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "lots" ADD CONSTRAINT "a lot is in quarantine, accepted or rejected"
  CHECK ("state" IN ('quarantine', 'accepted', 'rejected'));
ALTER TABLE "lots" ADD CONSTRAINT "the source of a lot is one the shop knows"
  CHECK ("source_class" IN ('maker-new', 'approved-manufacturer', 'used-serviceable', 'customer-supplied'));
ALTER TABLE "parts" ADD CONSTRAINT "a pack holds at least one piece" CHECK ("pack_size" > 0);
ALTER TABLE "parts" ADD CONSTRAINT "a shelf life is at least one month" CHECK ("shelf_life_months" > 0);
ALTER TABLE "parts" ADD CONSTRAINT "days at build and lead time are not negative"
  CHECK ("minimum_days_at_build" >= 0 AND "lead_time_days" >= 0);
ALTER TABLE "part_alternates" ADD CONSTRAINT "a part does not stand in for itself" CHECK ("part_id" <> "use_id");

-- Kits and purchasing
ALTER TABLE "kit_list_lines" ADD CONSTRAINT "a kit list line asks for at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "kit_list_lines" ADD CONSTRAINT "a kit list line's least is between none and its most"
  CHECK ("minimum" BETWEEN 0 AND "quantity");
ALTER TABLE "kit_lines" ADD CONSTRAINT "a kit line asks for no negative number of pieces" CHECK ("quantity" >= 0);
ALTER TABLE "kit_lines" ADD CONSTRAINT "a kit line's least is between none and its most" CHECK ("minimum" BETWEEN 0 AND "quantity");
ALTER TABLE "finding_parts" ADD CONSTRAINT "a finding asks for at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "purchase_order_lines" ADD CONSTRAINT "an order line asks for at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "purchase_order_lines" ADD CONSTRAINT "an order line has not received less than nothing" CHECK ("received" >= 0);

-- People and the shop
ALTER TABLE "shop_profile" ADD CONSTRAINT "there is one shop" CHECK ("id" = 1);
ALTER TABLE "shop_profile" ADD CONSTRAINT "a currency is three capital letters" CHECK ("currency" ~ '^[A-Z]{3}$');
ALTER TABLE "shop_profile" ADD CONSTRAINT "rates and fees are not negative"
  CHECK ("labour_rate_minor" >= 0 AND "evaluation_fee_minor" >= 0 AND "quote_valid_days" > 0);
ALTER TABLE "people" ADD CONSTRAINT "a role is one the shop knows"
  CHECK ("roles" <@ ARRAY['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator']);
ALTER TABLE "life_limits" ADD CONSTRAINT "a life limit names hours, cycles or both"
  CHECK (num_nonnulls("hours_tenths", "cycles") > 0 AND "hours_tenths" > 0 IS NOT FALSE AND "cycles" > 0 IS NOT FALSE);
ALTER TABLE "authorisations" ADD CONSTRAINT "an authorisation begins before it expires" CHECK ("valid_from" < "expires_on");
ALTER TABLE "people" ADD CONSTRAINT "a person who has left has a day, a reason and no account"
  CHECK (("left_on" IS NULL) = ("leave_reason" IS NULL) AND NOT ("left_on" IS NOT NULL AND "active"));
ALTER TABLE "shop_profile" ADD CONSTRAINT "the roles of a second factor are ones the shop knows"
  CHECK ("second_factor_roles" <@ ARRAY['front-desk', 'parts-room', 'technician', 'inspector', 'manager', 'administrator']);
ALTER TABLE "shop_profile" ADD CONSTRAINT "the times of locking and switching stay within a shift"
  CHECK ("lock_after_minutes" BETWEEN 1 AND 120 AND "badge_switch_hours" BETWEEN 0 AND 12);

-- Units and work orders
ALTER TABLE "serialized_items" ADD CONSTRAINT "an item has a serial or a provisional name"
  CHECK ("serial" IS NOT NULL OR "provisional_name" IS NOT NULL);
ALTER TABLE "serialized_items" ADD CONSTRAINT "an item joined into another has no serial of its own"
  CHECK ("joined_into_id" IS NULL OR ("serial" IS NULL AND "joined_into_id" <> "id"));
ALTER TABLE "installations" ADD CONSTRAINT "a part is not installed in itself" CHECK ("item_id" <> "parent_id");
ALTER TABLE "installations" ADD CONSTRAINT "a part is not taken off before it was put on" CHECK ("from_date" <= "to_date");
ALTER TABLE "time_records" ADD CONSTRAINT "hours are not negative"
  CHECK ("since_new_tenths" >= 0 AND "since_overhaul_tenths" >= 0 AND "meter_tenths" >= 0 AND "since_new_cycles" >= 0);
ALTER TABLE "aircraft_readings" ADD CONSTRAINT "a meter does not read less than nothing" CHECK ("hours_tenths" >= 0);
ALTER TABLE "releases" ADD CONSTRAINT "a corrected release says what it supersedes and why"
  CHECK (("version" = 1) = ("supersedes_id" IS NULL) AND ("version" = 1) = ("reason" = ''));
ALTER TABLE "loose_items" ADD CONSTRAINT "a loose item is at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "holds" ADD CONSTRAINT "a lifted hold says who lifted it, when and why"
  CHECK (num_nulls("lifted_by", "lifted_at", "lift_reason") IN (0, 3));
ALTER TABLE "sign_offs" ADD CONSTRAINT "work is signed after it was performed" CHECK ("performed_at" <= "signed_at");
ALTER TABLE "quotes" ADD CONSTRAINT "a quote's total is its subtotal and tax" CHECK ("total_minor" = "subtotal_minor" + "tax_minor");
ALTER TABLE "quotes" ADD CONSTRAINT "a quote's currency is three capital letters" CHECK ("currency" ~ '^[A-Z]{3}$');

-- Records
ALTER TABLE "record_links" ADD CONSTRAINT "a chain is counted from one" CHECK ("sequence" >= 1);
ALTER TABLE "record_links" ADD CONSTRAINT "a link is made of two SHA-256 hashes"
  CHECK ("previous" ~ '^[0-9a-f]{64}$' AND "hash" ~ '^[0-9a-f]{64}$');
ALTER TABLE "counters" ADD CONSTRAINT "a counter counts up from one" CHECK ("next" >= 1);
ALTER TABLE "stored_files" ADD CONSTRAINT "a file is named by its SHA-256 hash" CHECK ("hash" ~ '^[0-9a-f]{64}$' AND "size" >= 0);

-- Photos
ALTER TABLE "photos" ADD CONSTRAINT "a photo shows a finding, a traveler, a step or a unit"
  CHECK ("subject_kind" IN ('finding', 'traveler', 'traveler-step', 'work-order'));
ALTER TABLE "photos" ADD CONSTRAINT "a photo says what it shows" CHECK (length("title") >= 3);
ALTER TABLE "struck_photos" ADD CONSTRAINT "a struck photo says why" CHECK ("reason" <> '');
ALTER TABLE "staged_files" ADD CONSTRAINT "a waiting file is named by its SHA-256 hash"
  CHECK ("hash" ~ '^[0-9a-f]{64}$' AND "size" > 0 AND num_nulls("thumbnail_hash", "thumbnail_size") IN (0, 2));

-- What is true once at a time
CREATE UNIQUE INDEX "a unit is in the shop once" ON "work_orders" ("unit_id") WHERE "closed_at" IS NULL;
CREATE UNIQUE INDEX "a part is installed in one place" ON "installations" ("item_id") WHERE "to_date" IS NULL;
CREATE UNIQUE INDEX "a position holds one part" ON "installations" ("parent_id", "position") WHERE "to_date" IS NULL;
CREATE UNIQUE INDEX "a person carries one badge" ON "badges" ("person_id") WHERE "revoked_at" IS NULL;
CREATE UNIQUE INDEX "a manual has one current revision" ON "manual_revisions" ("manual_id") WHERE "state" = 'current';

-- Indexes over what is still open
CREATE INDEX "holds_open" ON "holds" ("work_order_id") WHERE "lifted_at" IS NULL;
CREATE INDEX "kits_open" ON "kits" ("need_by") WHERE "closed_at" IS NULL;
CREATE INDEX "work_orders_open" ON "work_orders" ("stage", "stage_since") WHERE "closed_at" IS NULL;
CREATE INDEX "purchase_order_lines_open" ON "purchase_order_lines" ("part_id", "due_on") WHERE "received" < "quantity";
CREATE INDEX "balances_here" ON "balances" ("lot_id") WHERE "on_hand" > 0;
CREATE UNIQUE INDEX "a part is in one open load" ON "load_parts" ("step_id") WHERE "open";
CREATE INDEX "traveler_steps_open" ON "traveler_steps" ("traveler_id", "sequence") WHERE "state" = 'open';

-- Finding by any piece of a serial, part number or name. Partial, because Prisma's engine would otherwise take them for drift.
CREATE EXTENSION IF NOT EXISTS pg_trgm;
CREATE INDEX "serialized_items_search" ON "serialized_items" USING gin ("serial" gin_trgm_ops) WHERE "serial" IS NOT NULL;
CREATE INDEX "lots_search" ON "lots" USING gin ("code" gin_trgm_ops) WHERE "code" IS NOT NULL;
CREATE INDEX "parts_search" ON "parts" USING gin ("number" gin_trgm_ops, "description" gin_trgm_ops) WHERE "number" IS NOT NULL;
CREATE INDEX "work_orders_search" ON "work_orders" USING gin ("number" gin_trgm_ops) WHERE "number" IS NOT NULL;
CREATE INDEX "customers_search" ON "customers" USING gin ("name" gin_trgm_ops) WHERE "name" IS NOT NULL;

-- Rows that are only added
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'Rows of % are only added: they are never changed or removed.', TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', TABLE = TG_TABLE_NAME, CONSTRAINT = 'rows that are only added';
END
$$;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "movements" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "record_entries" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "record_entries" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "record_links" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "record_links" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "sign_offs" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "sign_offs" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "measurements" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "measurements" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "releases" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "releases" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "superseded_dispositions" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "superseded_dispositions" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "photos" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "photos" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "struck_photos" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "struck_photos" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "given_names" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "shop_keys" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "anchors" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "anchored_heads" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "purges" EXECUTE FUNCTION "refuse_change"();

-- What the running server may do. It owns nothing here, so it can neither drop a guard nor switch one off.
-- Roles belong to the whole cluster: another database's migration may make this one at the same moment.
DO $$
BEGIN
  CREATE ROLE hubwright_server NOLOGIN;
EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
END
$$;
GRANT USAGE ON SCHEMA public TO hubwright_server;
GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO hubwright_server;
GRANT USAGE, SELECT ON ALL SEQUENCES IN SCHEMA public TO hubwright_server;
ALTER DEFAULT PRIVILEGES IN SCHEMA public GRANT SELECT, INSERT, UPDATE, DELETE ON TABLES TO hubwright_server;
ALTER DEFAULT PRIVILEGES IN SCHEMA public GRANT USAGE, SELECT ON SEQUENCES TO hubwright_server;
REVOKE UPDATE, DELETE ON "movements", "record_entries", "record_links", "sign_offs", "measurements", "releases",
  "superseded_dispositions", "given_names", "photos", "struck_photos", "shop_keys", "anchors", "anchored_heads", "purges" FROM hubwright_server;
DO $$
BEGIN -- absent when these files are applied by hand
  REVOKE INSERT, UPDATE, DELETE ON "_prisma_migrations" FROM hubwright_server;
EXCEPTION WHEN undefined_table THEN NULL;
END
$$;

-- Who may destroy records whose time has run: no login of its own, and not the running server. The owner takes this role for
-- one purge, which leaves a signed proof.
DO $$
BEGIN
  CREATE ROLE hubwright_retention NOLOGIN;
EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
END
$$;
GRANT USAGE ON SCHEMA public TO hubwright_retention;
GRANT SELECT ON ALL TABLES IN SCHEMA public TO hubwright_retention;
GRANT DELETE ON "record_entries", "record_links", "sign_offs", "measurements", "releases", "superseded_dispositions",
  "photos", "struck_photos", "stored_files" TO hubwright_retention;
GRANT INSERT ON "purges" TO hubwright_retention;
