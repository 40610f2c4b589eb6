/** The build, and the past day if one is looked at, that every read here is about. */
export interface Reading {
  readonly build: number;
  readonly asOf?: string;
}
