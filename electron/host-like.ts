/** The workbook that is open, as the shells show it: a window title, a line in a terminal, an entry of recent files. */
interface OpenWorkbook {
  readonly name: string;
  readonly path: string;
  readonly readOnly: boolean;
}

/**
 * What a shell needs of the host that answers the page. The shells know this and no more, so a test can put a
 * stand-in behind the real doors.
 */
export interface HostLike {
  /** Answers /api/**; the change feed is a text/event-stream. */
  handle(request: Request): Promise<Response>;
  /** Opens a workbook file. Throws a `Refusal` when it can't. */
  openFile(path: string): void;
  /** The workbook that is open, or null. */
  current(): OpenWorkbook | null;
  /** Closes the workbook and every stream. */
  close(): void;
}
