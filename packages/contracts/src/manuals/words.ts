import { z } from 'zod';

/** What a customer can ask for. Each has its own route, kit and permitted record words; only an overhaul restarts time since overhaul. */
export const scopes = [
  'overhaul',
  'inspect-and-repair',
  'reseal',
  'strike-inspection',
  'fixed-pitch',
  'governor',
  'balance-only',
] as const;
export const scopeSchema = z.enum(scopes).meta({ id: 'Scope' });
export type Scope = (typeof scopes)[number];

export const scopeTitles: Record<Scope, string> = {
  overhaul: 'Overhaul',
  'inspect-and-repair': 'Inspect and repair as necessary',
  reseal: 'Reseal',
  'strike-inspection': 'Strike inspection',
  'fixed-pitch': 'Fixed-pitch recondition',
  governor: 'Governor',
  'balance-only': 'Balance only',
};

export const unitKinds = ['propeller', 'governor'] as const;
export const unitKind = z.enum(unitKinds).meta({ id: 'UnitKind' });

/** What the blades, or a governor's body, are made of. */
export const material = z.enum(['aluminium', 'steel', 'composite']).meta({ id: 'Material' });
export const pitch = z
  .enum(['none', 'fixed', 'ground-adjustable', 'constant-speed', 'feathering', 'reversing'])
  .meta({ id: 'Pitch' });

/** What happened to a unit. Each has an inspection of its own in the manual; none can be answered by a reseal or a balance. */
export const declaredEvents = ['strike', 'lightning', 'overspeed', 'fire', 'immersion', 'metal-in-oil'] as const;
export const declaredEvent = z.enum(declaredEvents).meta({ id: 'DeclaredEvent' });
export type DeclaredEvent = (typeof declaredEvents)[number];

export const eventTitles: Record<DeclaredEvent, string> = {
  strike: 'Propeller strike',
  lightning: 'Lightning',
  overspeed: 'Overspeed',
  fire: 'Fire',
  immersion: 'Immersion',
  'metal-in-oil': 'Metal in the oil',
};

/** Classes of serialized part; each goes through the shop by the route of its class. `assembly` is the unit itself. */
export const partClasses = [
  'assembly',
  'hub',
  'blade',
  'clamp',
  'counterweight',
  'cylinder',
  'piston',
  'spinner',
  'governor-body',
  'flyweights',
] as const;
export const partClass = z.enum(partClasses).meta({ id: 'PartClass' });
export type PartClass = (typeof partClasses)[number];

export const stepKinds = ['work', 'measure', 'inspect'] as const;
export const stepKind = z.enum(stepKinds).meta({ id: 'StepKind' });
export type StepKind = (typeof stepKinds)[number];

/** When a step may start: once evaluation is approved, once the firm quote is, at build, or for release. */
export const phases = ['evaluation', 'repair', 'build', 'final'] as const;
export const phase = z.enum(phases).meta({ id: 'Phase' });
export type Phase = (typeof phases)[number];

/** What must have been done before a record may say overhauled: the words of 14 CFR 43.2(a)(1). */
export const overhaulFacts = ['disassembled', 'cleaned', 'inspected', 'repaired', 'reassembled', 'tested'] as const;
export const overhaulFact = z.enum(overhaulFacts).meta({ id: 'OverhaulFact' });
export type OverhaulFact = (typeof overhaulFacts)[number];

/** Where the pieces of a kit list line come from. */
export const lineSources = ['new', 'reused', 'any'] as const;
export const lineSource = z.enum(lineSources).meta({ id: 'LineSource' });
export type LineSource = (typeof lineSources)[number];

/** How values are compared with limits: rounded to the limit's last place, or as read (ASTM E29). */
export const roundingMethod = z.enum(['rounding', 'absolute']).meta({ id: 'RoundingMethod' });

export const instrumentKinds = [
  'caliper',
  'micrometer',
  'dial-indicator',
  'protractor',
  'torque-wrench',
  'pressure-gauge',
  'balance-stand',
  'thickness-gauge',
  'governor-bench',
  'eddy-current-set',
  'ohmmeter',
  'insulation-tester',
  'vibration-analyser',
] as const;
export const instrumentKind = z.enum(instrumentKinds).meta({ id: 'InstrumentKind' });
export type InstrumentKind = (typeof instrumentKinds)[number];

/** Tanks, and what a crack test is made with: each is fit for work only while its analyses or its checks of the day are. */
export const equipmentKinds = [
  'strip-tank',
  'etch-tank',
  'anodise-tank',
  'conversion-coat-tank',
  'cadmium-tank',
  'penetrant-line',
  'magnetic-bench',
  'eddy-current-station',
] as const;
export const equipmentKind = z.enum(equipmentKinds).meta({ id: 'EquipmentKind' });
export type EquipmentKind = (typeof equipmentKinds)[number];

/** Checked as a whole, once a day; a tank is analysed quantity by quantity. */
export const isTestSystem = (kind: EquipmentKind) => !kind.endsWith('-tank');

/** What is measured, where it is one of the dimensions a part is followed by from visit to visit. */
export const dimensions = [
  'width',
  'thickness',
  'twist',
  'edge-alignment',
  'face-alignment',
  'length',
  'shank-diameter',
  'retention-diameter',
  'bore-diameter',
  'bend-distance',
  'bend-angle',
  'tap-void',
  'moisture',
  'resistance',
  'static-moment',
] as const;
export const dimension = z.enum(dimensions).meta({ id: 'Dimension' });
export type Dimension = (typeof dimensions)[number];

export const dimensionTitles: Record<Dimension, string> = {
  width: 'Width',
  thickness: 'Thickness',
  twist: 'Twist',
  'edge-alignment': 'Edge alignment',
  'face-alignment': 'Face alignment',
  length: 'Length',
  'shank-diameter': 'Shank diameter',
  'retention-diameter': 'Retention diameter',
  'bore-diameter': 'Bore diameter',
  'bend-distance': 'Bend, distance from the hub',
  'bend-angle': 'Bend angle',
  'tap-void': 'Void by tap test',
  moisture: 'Moisture',
  resistance: 'Resistance',
  'static-moment': 'Static moment',
};

export const surfaces = ['face', 'camber'] as const;
export const chordParts = ['leading', 'middle', 'trailing'] as const;
export const corrosionClasses = ['light', 'moderate', 'heavy'] as const;
export const corrosionClass = z.enum(corrosionClasses).meta({ id: 'CorrosionClass' });
export type CorrosionClass = (typeof corrosionClasses)[number];

/** Papers work goes by beside the overhaul manual of the model. */
export const documentKinds = [
  'blade-manual',
  'standard-practices',
  'temporary-revision',
  'service-letter',
  'service-bulletin',
  'directive',
  'alternative-means',
  'installation-instructions',
] as const;
export const documentKind = z.enum(documentKinds).meta({ id: 'DocumentKind' });
export type DocumentKind = (typeof documentKinds)[number];

export const documentKindTitles: Record<DocumentKind, string> = {
  'blade-manual': 'Blade manual',
  'standard-practices': 'Standard-practices manual',
  'temporary-revision': 'Temporary revision',
  'service-letter': 'Service letter',
  'service-bulletin': 'Service bulletin',
  directive: 'Airworthiness directive',
  'alternative-means': 'Alternative means of compliance',
  'installation-instructions': 'Installation instructions',
};
