import { addAircraft } from '../apps/server/src/modules/customers/add-aircraft.command.ts';
import { addCustomer } from '../apps/server/src/modules/customers/add-customer.command.ts';
import { recordReading } from '../apps/server/src/modules/customers/record-reading.command.ts';
import { addBin } from '../apps/server/src/modules/inventory/add-bin.command.ts';
import { addPart } from '../apps/server/src/modules/inventory/add-part.command.ts';
import { addPerson } from '../apps/server/src/modules/people/add-person.command.ts';
import { chooseOwnPassword } from '../apps/server/src/modules/people/choose-own-password.command.ts';
import { grantAuthorisation } from '../apps/server/src/modules/people/grant-authorisation.command.ts';
import { setUpShop } from '../apps/server/src/modules/people/set-up-shop.command.ts';
import { addInstrument } from '../apps/server/src/modules/processes/add-instrument.command.ts';
import { calibrateInstrument } from '../apps/server/src/modules/processes/calibrate-instrument.command.ts';
import { addSupplier } from '../apps/server/src/modules/purchasing/add-supplier.command.ts';
import type { Calendar } from './calendar.ts';
import { customers } from './data/customers.ts';
import { instruments } from './data/instruments.ts';
import { parts as partSeeds } from './data/parts.ts';
import { administrator, demoPassword, demoPin, firstPassword, people } from './data/people.ts';
import { shop } from './data/shop.ts';
import { bins, suppliers as supplierSeeds } from './data/suppliers.ts';
import { seedEquipment } from './equipment.ts';
import { seedBalanceData } from './field-balances.ts';
import { seedManuals } from './manuals.ts';
import { seedPeening } from './peening.ts';
import type { SeedRun } from './run.ts';
import { seedWorkingTime } from './working-time.ts';

/** How long ago the shop began to keep its records here, in days. */
const beginning = -420;

/** Ids that later parts of the seed refer to, by the codes people know. */
export interface Reference {
  readonly customers: ReadonlyMap<string, string>;
  readonly aircraft: ReadonlyMap<string, string>;
  readonly parts: ReadonlyMap<string, string>;
  readonly suppliers: ReadonlyMap<string, string>;
  readonly instruments: ReadonlyMap<string, string>;
  readonly models: ReadonlyMap<string, string>;
  readonly manuals: ReadonlyMap<string, string>;
  /** By designation, airframe and position. */
  readonly applications: ReadonlyMap<string, string>;
}

/**
 * The shop before its first unit: people, customers, parts, manuals, instruments. Needs an empty database. What has a day of
 * its own (revisions, readings, instruments) is put down in the calendar, to be played by the caller.
 */
export async function seedReference(run: SeedRun, calendar: Calendar): Promise<Reference> {
  run.at(beginning);
  await seedPeople(run);
  await seedWorkingTime(run, calendar, beginning);
  const suppliers = await seedSuppliers(run);
  const parts = await seedParts(run, suppliers);
  const fleet = await seedCustomers(run, calendar);
  const manuals = await seedManuals(run, calendar);
  await seedPeening(run, calendar, beginning);
  await seedBalanceData(run, { parts, models: manuals.models });
  await seedEquipment(run, calendar);
  return { ...fleet, ...manuals, parts, suppliers, instruments: await seedInstruments(run, calendar) };
}

async function seedPeople(run: SeedRun): Promise<void> {
  await run.run(setUpShop, { shop, administrator: { ...administrator, password: demoPassword } });
  run.know(administrator.signInName, await run.personId(administrator.signInName), ['administrator']);
  for (const { authorisations, ...person } of people) {
    const email = `${person.signInName}@tansyhollow.example.com`;
    const input = { ...person, roles: [...person.roles], email, password: firstPassword };
    const { id } = await run.run(addPerson, input, { by: administrator.signInName });
    run.know(person.signInName, id, person.roles);
    const own = { password: firstPassword, newPassword: demoPassword, pin: demoPin };
    await run.run(chooseOwnPassword(''), own, { by: person.signInName });
    for (const held of authorisations)
      for (const process of held.processes)
        await run.run(
          grantAuthorisation,
          {
            personId: id,
            process,
            level: held.level,
            validFrom: run.day(held.from ?? beginning),
            ...(held.expires === undefined ? {} : { expiresOn: run.day(held.expires) }),
          },
          { by: administrator.signInName },
        );
  }
}

async function seedSuppliers(run: SeedRun): Promise<Map<string, string>> {
  const ids = new Map<string, string>();
  for (const supplier of supplierSeeds) {
    const approvedUntil = run.day(supplier.approvedUntil);
    const { id } = await run.run(addSupplier, { ...supplier, approvedUntil }, { by: 'manager' });
    ids.set(supplier.code, id);
  }
  return ids;
}

async function seedParts(run: SeedRun, supplierIds: ReadonlyMap<string, string>): Promise<Map<string, string>> {
  for (const [index, [code, title]] of bins.entries())
    await run.run(addBin, { code, title, walk: (index + 1) * 10 }, { by: 'parts' });
  const ids = new Map<string, string>();
  for (const { supplier, ...part } of partSeeds) {
    const supplierId = supplierIds.get(supplier);
    if (!supplierId) throw new Error(`There is no supplier ${supplier}`);
    ids.set(part.number, (await run.run(addPart, { ...part, supplierId }, { by: 'parts' })).id);
  }
  return ids;
}

/** Instruments as they were when the records began, calibrated again on each last good day until the one that counts today. */
async function seedInstruments(run: SeedRun, calendar: Calendar): Promise<Map<string, string>> {
  const ids = new Map<string, string>();
  for (const { calibrated, due, known, ...instrument } of instruments) {
    const interval = due - calibrated;
    let on = calibrated - Math.ceil((calibrated - beginning) / interval) * interval;
    const dates = (day: number) => ({ calibratedOn: run.day(day), calibrationDueOn: run.day(day + interval) });
    const { id } = await run.run(
      addInstrument,
      { ...instrument, ...dates(on), ...doubtOf(known) },
      { by: 'inspector' },
    );
    ids.set(instrument.tag, id);
    for (let version = 1; on + interval <= calibrated; version++) {
      on += interval;
      const input = {
        instrumentId: id,
        ...dates(on),
        inService: true,
        certificate: `K-${instrument.tag}-${version}`,
        ...doubtOf(known),
        ...pointOf(known, version),
      };
      calendar.on(on, 13.1, () => run.run(calibrateInstrument, input, { by: 'inspector', version }));
    }
  }
  return ids;
}

type Known = (typeof instruments)[number]['known'];

function doubtOf(known: Known) {
  if (!known) return {};
  const { uncertainty, unit, moreDoubts = [] } = known;
  return { uncertainty, unit, moreDoubts: [...moreDoubts] };
}

/** It drifts by a sixth of what is allowed from calibration to calibration, and is put right each time. */
function pointOf(known: Known, version: number) {
  if (!known) return {};
  const { nominal, allowed } = known;
  const decimals = nominal.split('.')[1]?.length ?? 0;
  const asFound = (Number(nominal) + (Number(allowed) * version) / 6).toFixed(decimals);
  return { points: [{ nominal, asFound, asLeft: nominal, allowed }] };
}

/** Customers with their aircraft, and a reading a quarter for a year, from today's hours back. */
async function seedCustomers(run: SeedRun, calendar: Calendar): Promise<Pick<Reference, 'customers' | 'aircraft'>> {
  const customerIds = new Map<string, string>();
  const aircraftIds = new Map<string, string>();
  for (const { aircraft, ...customer } of customers) {
    const { id: customerId } = await run.run(addCustomer, customer, { by: 'desk' });
    customerIds.set(customer.code, customerId);
    for (const { hours, monthly, ...plane } of aircraft) {
      const { id: aircraftId } = await run.run(addAircraft, { ...plane, customerId }, { by: 'desk' });
      aircraftIds.set(plane.registration, aircraftId);
      for (const ago of [370, 280, 190, 100, 10]) {
        const hoursTenths = Math.round(hours * 10 - (monthly * 10 * ago) / 30.4);
        const input = { aircraftId, readOn: run.day(-ago), meter: 'airframe' as const, hoursTenths };
        if (hoursTenths > 0) calendar.on(-ago, 16, () => run.run(recordReading, input, { by: 'desk' }));
      }
    }
  }
  return { customers: customerIds, aircraft: aircraftIds };
}
