/** A build and the day that it is shown at. */
export interface Reading {
  readonly build: number;
  readonly asOf?: string;
}
