/** What the command line needs of the world, so that tests can stand in for it. */

export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Where a file goes that was asked for on the standard output; `out` where it is absent. */
  readonly data?: (text: string) => void;
  /** Characters on a line of the terminal. */
  readonly columns: number;
  /** Whether `out` is a terminal rather than a file or another program. */
  readonly terminal: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The time as ISO 8601. */
  readonly now: () => string;
}

const USUAL_COLUMNS = 100;

/** The world as this process sees it. */
export function processIo(): Io {
  const { stdout, stderr, env } = process;
  const asked = Number(env.COLUMNS);
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    columns: stdout.columns ?? (asked > 0 ? asked : USUAL_COLUMNS),
    terminal: stdout.isTTY === true,
    env,
    now: () => new Date().toISOString(),
  };
}

// Escape sequences that we write ourselves: colours.
const COLOUR = /^\p{Cc}\[\d{1,2}m/u;

/** The text without control characters that could disturb a terminal; our own colours stay where they are allowed. */
export function harmless(text: string, colours: boolean): string {
  let safe = '';
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x1b) {
      const colour = colours ? COLOUR.exec(text.slice(at, at + 6))?.[0] : undefined;
      if (colour) {
        safe += colour;
        at += colour.length - 1;
      } else safe += '?';
    } else if (code === 0x0a || (code >= 0x20 && code < 0x7f) || code > 0x9f) safe += text[at];
    else safe += code === 0x09 ? ' ' : '?';
  }
  return safe;
}
