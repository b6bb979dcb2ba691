/** Where the refits lie when nobody says otherwise: where the system keeps what belongs to a user's programs. */
import { posix, win32 } from 'node:path';

/** Refused with undefined where the system says nothing of a home. */
export function usualFolder(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  home: string,
): string | undefined {
  if (platform === 'win32') {
    const base = env.LOCALAPPDATA || (home && win32.join(home, 'AppData', 'Local'));
    return base ? win32.join(base, 'Fettle') : undefined;
  }
  if (platform === 'darwin')
    return home ? posix.join(home, 'Library', 'Application Support', 'Fettle') : undefined;
  // The XDG Base Directory Specification says to ignore a path that is not absolute.
  const data = env.XDG_DATA_HOME;
  if (data && posix.isAbsolute(data)) return posix.join(data, 'fettle');
  return home ? posix.join(home, '.local', 'share', 'fettle') : undefined;
}
