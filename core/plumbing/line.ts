/** A hose line from port to port, as it is planned. Lengths in mm, pressures in bar gauge, temperatures in °C. */

export const routes = ['straight', 'measured', 'u', 'corner', 'offset'] as const;

export const endStyles = ['crimp', 'reusable', 'push-on', 'barb'] as const;
export type EndStyle = (typeof endStyles)[number];

export const services = ['pressure', 'return', 'suction', 'drain', 'vent', 'boost', 'brake-servo'] as const;
/** What the line does; decides which velocity guide, which clamps and whether a vacuum rating is asked for. */
export type Service = (typeof services)[number];

export const sleeves = ['abrasion', 'heat'] as const;
export type Sleeve = (typeof sleeves)[number];

export interface LineEnd {
  /** What the end joins with, as typed: `JIC -6 female`. */
  readonly port?: string | undefined;
  readonly style?: EndStyle | undefined;
  readonly angleDeg: number;
  /** Reference point to where the cut hose stops inside the end, along the hose axis. */
  readonly cutoffMm: number;
  /** How far a bent end carries its seat sideways off the hose axis. */
  readonly dropMm?: number | undefined;
  readonly insertMm?: number | undefined;
  readonly swivel?: boolean | undefined;
  readonly maxBar?: number | undefined;
  readonly boreMm?: number | undefined;
}

/** Where the hose runs. The given lengths are those of the route's own row; see `lengths.ts`. */
export type Path =
  | { readonly route: 'straight'; readonly lengthMm: number }
  | {
      readonly route: 'measured';
      readonly lengthMm: number;
      /** Smallest centre-line radius on the way, where somebody looked. */
      readonly radiusMm?: number | undefined;
      /** All turns added up. */
      readonly turnDeg?: number | undefined;
    }
  | { readonly route: 'u'; readonly spacingMm: number }
  | { readonly route: 'corner'; readonly aMm: number; readonly bMm: number; readonly radiusMm: number }
  | { readonly route: 'offset'; readonly xMm: number; readonly yMm: number; readonly radiusMm: number };

/** The hose: its type, and what is printed on it or written in its maker's data, which goes before any table. */
export interface HoseChoice {
  readonly type?: string | undefined;
  readonly dash?: number | undefined;
  readonly boreMm?: number | undefined;
  readonly outsideMm?: number | undefined;
  readonly minBendRadiusMm?: number | undefined;
  readonly metal?: boolean | undefined;
  readonly maxBar?: number | undefined;
  readonly vacuumBar?: number | undefined;
  readonly minC?: number | undefined;
  readonly maxC?: number | undefined;
  readonly className?: string | undefined;
  readonly tubeMaterial?: string | undefined;
  /** Share of the working pressure left when hot, from the hose's maker. */
  readonly hotFactor?: number | undefined;
}

export interface RatedAdapter {
  readonly text: string;
  readonly maxBar?: number | undefined;
}

/** What is known of a line that drains by its own weight. */
export interface DrainFacts {
  readonly housingHoleMm?: number | undefined;
  readonly outletAngleDeg?: number | undefined;
  /** Smallest slope below horizontal on the way; zero is level, negative rises. */
  readonly minSlopeDeg?: number | undefined;
  /** Height of the drain's entry above the running oil level; negative below it. */
  readonly entryAboveOilMm?: number | undefined;
  /** Bores in the order of flow, where they differ on the way. */
  readonly boresMm?: readonly number[] | undefined;
  readonly largeFrame?: boolean | undefined;
}

export interface Line {
  readonly id?: string | undefined;
  readonly name?: string | undefined;
  readonly quantity: number;
  readonly fluid?: string | undefined;
  readonly ethanolPercent?: number | undefined;
  readonly service?: Service | undefined;
  readonly pressureBar?: number | undefined;
  readonly vacuumBar?: number | undefined;
  readonly tempMinC?: number | undefined;
  readonly tempMaxC?: number | undefined;
  readonly ambientMaxC?: number | undefined;
  readonly nearExhaust?: boolean | undefined;
  readonly inTank?: boolean | undefined;
  readonly addOnCooler?: boolean | undefined;
  readonly flowLitresPerMinute?: number | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly ends: readonly [LineEnd, LineEnd];
  readonly path: Path;
  /** Whether the path was measured on the car or is a guess still. */
  readonly pathBasis: 'measured' | 'estimated';
  readonly hose: HoseChoice;
  /** How much the hose shortens under pressure, as a share. */
  readonly contraction?: number | undefined;
  readonly movementMm: number;
  /** Straight hose wanted behind each end; without it, `straightLead` of the outside diameter. */
  readonly leadsMm: readonly [number | undefined, number | undefined];
  readonly clockDeg?: number | undefined;
  readonly sleeve?: Sleeve | undefined;
  /** Farthest that the hose may run between two supports. */
  readonly clipSpacingMm?: number | undefined;
  readonly adapters: readonly RatedAdapter[];
  readonly drain?: DrainFacts | undefined;
}
