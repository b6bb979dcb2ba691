/** Short words for a wiring, for tests. */
import type { Wiring, WiringDevice, WiringWire } from '../../refit/types.ts';

/** 'K1 relay coil-current=50_mA': id, kind, settings with _ for a space; 'G1.plus F1.1 / cable' a wire. */
export function wired(
  devices: readonly string[],
  wires: readonly string[],
  cables: Readonly<Record<string, Readonly<Record<string, string>>>> = {},
): Wiring {
  const all = devices.map((text): WiringDevice => {
    const [id = '', kind = '', ...settings] = text.split(' ');
    return {
      id,
      kind,
      name: '',
      part: null,
      where: 'cabinet',
      settings: Object.fromEntries(
        settings.map((each) => {
          const at = each.indexOf('=');
          return [each.slice(0, at), each.slice(at + 1).replaceAll('_', ' ')];
        }),
      ),
      terminals: {},
      pins: {},
    };
  });
  const runs = wires.map((text, at): WiringWire => {
    const [path = '', cable] = text.split(' / ');
    const [from = '', to = ''] = path.split(' ');
    return { id: `w${at + 1}`, from, to, cable: cable ?? null, settings: {} };
  });
  return {
    devices: Object.fromEntries(all.map((each) => [each.id, each])),
    wires: Object.fromEntries(runs.map((each) => [each.id, each])),
    cables: Object.fromEntries(
      Object.entries(cables).map(([id, settings]) => [id, { id, name: id, settings }]),
    ),
    settings: {},
  };
}
