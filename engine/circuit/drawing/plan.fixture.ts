/** Plans made up for tests and timings. */
import type { DrawnDevice, DrawnWire, Plan, Rail } from './types.ts';

export const PLUS: Rail = { name: '+24 V', role: 'feeds' };
export const MINUS: Rail = { name: '0 V', role: 'returns' };

/** `count` inputs of a control, each with a switch and a strip terminal, and as many relays with a fuse. */
export function manyChains(count: number): Plan {
  const devices: DrawnDevice[] = [
    { id: 'G1', name: 'Supply', groups: [{ symbol: 'power-supply', box: ['G1.plus', 'G1.minus'] }] },
  ];
  const wires: DrawnWire[] = [];
  const wire = (from: string, to: string, rail: Rail | null, circuit: string): void => {
    const id = `w${wires.length + 1}`;
    wires.push({ id, from, to, label: `${wires.length + 1} · red · 0.75`, rail, circuit });
  };
  for (let block = 0; block * 16 < count; block++) {
    const circuit = `inputs-${block}`;
    const control = `A${block + 1}`;
    const box: string[] = [];
    for (let n = block * 16; n < Math.min(count, block * 16 + 16); n++) {
      const at = n + 1;
      devices.push(
        {
          id: `S${at}`,
          name: `Switch ${at}`,
          groups: [{ symbol: 'limit-switch', poles: [[`S${at}.13`, `S${at}.14`]] }],
        },
        { id: `X${at}`, name: '', groups: [{ symbol: 'terminal', points: [`X${at}.1`] }] },
        {
          id: `K${at}`,
          name: `Relay ${at}`,
          groups: [{ symbol: 'coil', poles: [[`K${at}.A1`, `K${at}.A2`]] }],
        },
      );
      box.push(`${control}.I${at}`, `${control}.Q${at}`);
      wire('G1.plus', `S${at}.13`, PLUS, circuit);
      wire(`S${at}.14`, `X${at}.1`, null, circuit);
      wire(`X${at}.1`, `${control}.I${at}`, null, circuit);
      wire(`${control}.Q${at}`, `K${at}.A1`, null, circuit);
      wire(`K${at}.A2`, 'G1.minus', MINUS, circuit);
    }
    devices.push({ id: control, name: 'Control', groups: [{ symbol: 'control', box }] });
  }
  const circuits = [...new Set(wires.map(({ circuit }) => circuit))].map((id) => ({ id, title: id }));
  return { circuits, devices, wires };
}
