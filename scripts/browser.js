/** Finds the Chromium that the browser tests drive, or installs it where that is allowed. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * As a headless browser of a closed network is started; a container's root has no sandbox to give.
 * The browser's own pages below the address line take a second of a processor for each window and are seen by nobody.
 */
export const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${[
    'WebUIOmniboxPopup',
    'WebUIOmniboxAimPopup',
    // Of the driver's own list, which this one replaces: what would ask the network, or hold back a first picture.
    'AimEnabled',
    'HttpsUpgrades',
    'MediaRouter',
    'NetworkTimeServiceQuerying',
    'OptimizationHints',
    'PaintHolding',
    'PreconnectToSearch',
  ].join(',')}`,
];

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

function find() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of NAMES) {
      const path = join(folder, name);
      try {
        accessSync(path, constants.X_OK);
        return path;
      } catch {
        // not here
      }
    }
  }
  return undefined;
}

/** Path of a Chromium. Ends with the one command to type where there is none and it may not be installed. */
export function browser() {
  const found = find();
  if (found) return found;
  const mayInstall = process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0;
  if (mayInstall) {
    console.log('Installing Chromium for the browser tests (once) …');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit', env });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
      stdio: 'inherit',
      env,
    });
    const now = find();
    if (now) return now;
  }
  console.error('The browser tests need Chromium. On Debian and its kin: sudo apt-get install chromium');
  process.exit(2);
}
