/**
 * Fluids against the material of the hose's tube. A: usual choice; B: limited, the grade, share and temperature decide;
 * C: do not use; U: unknown. Published guidance and practice; the hose maker's data decides.
 */
export const tubeMaterials = [
  'NBR',
  'HNBR',
  'ECO',
  'CR',
  'EPDM',
  'VMQ (silicone)',
  'FVMQ',
  'FKM',
  'PTFE',
  'PA12',
  'CPE',
] as const;

export type TubeMaterial = (typeof tubeMaterials)[number];
export type CompatibilityLetter = 'A' | 'B' | 'C' | 'U';

const fromMemory = 'from memory, elastomer handbook practice; follow the hose maker';
const ethanolPublished =
  'Published: US DOE E85 handbook asks for E85-rated materials only; EASA 2008 biofuel safety study calls nitrile not ' +
  'sufficiently resistant with larger ethanol shares (quoted publicly); a 2014 immersion study reports tensile loss of ' +
  'nitrile from E5 to E10. Letters: from memory, conservative';
const coolantPublished = 'SAE J20 lists silicone, NBR, CR and EPDM hose classes; letters from memory';

interface FluidRow {
  readonly fluid: string;
  /** One letter for each of `tubeMaterials`, in their order. */
  readonly letters: string;
  readonly source: string;
}

export const fluidRows = [
  { fluid: 'gasoline E0-E10', letters: 'BBBCCCBAAAB', source: fromMemory },
  { fluid: 'gasoline-ethanol E11-E85', letters: 'CCBCCCBBABC', source: ethanolPublished },
  { fluid: 'methanol blends', letters: 'CCCCCCBCACC', source: fromMemory },
  { fluid: 'diesel / biodiesel up to 7 %', letters: 'BAACCCAAAAB', source: fromMemory },
  { fluid: 'engine oil', letters: 'BABCCCBAABB', source: fromMemory },
  { fluid: 'water-glycol coolant', letters: 'BBUBABUCABU', source: coolantPublished },
  { fluid: 'glycol brake fluid (DOT 3/4/5.1)', letters: 'CCCCACCCABU', source: fromMemory },
  { fluid: 'mineral or PAO transmission oil', letters: 'BABCCCBAABB', source: fromMemory },
  { fluid: 'boost air to 120 C with oil mist', letters: 'CBBCCBAAABU', source: fromMemory },
  { fluid: 'boost air above 150 C with oil mist', letters: 'CCCCCBAAUCC', source: fromMemory },
  { fluid: 'crankcase vapour', letters: 'BAACCCAAABB', source: fromMemory },
  { fluid: 'vacuum (air)', letters: 'BABBBBAAABB', source: fromMemory },
  { fluid: 'water injection / methanol-water 50 %', letters: 'CCCCBBBCABU', source: fromMemory },
] as const satisfies readonly FluidRow[];

export type Fluid = (typeof fluidRows)[number]['fluid'];
