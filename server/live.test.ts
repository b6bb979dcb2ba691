import { describe, expect, test } from 'vitest';
import type { Fact } from '../engine/refit/index.ts';
import { factChange, follow, measured, type Trial, trial } from './server.fixture.ts';

async function edits(on: Trial, id: string, count: number): Promise<void> {
  let { head, refit } = await on.open(id);
  let old: Fact | null = refit.parts['x-motor']!.facts.resistance ?? null;
  for (let done = 0; done < count; done++) {
    const now = measured(`${head + 1} ohm`);
    const json = { who: 'Anna', basedOn: head, changes: [factChange('resistance', old, now)] };
    expect((await on.call('POST', `/api/refits/${id}/edits`, { json })).status).toBe(201);
    old = now;
    head++;
  }
}

describe('live', () => {
  test('derived: two who listen hear of every edit once, in order; of another refit nothing', async () => {
    const on = await trial();
    const [id, other] = [await on.lathe(), await on.lathe()];
    const streams = await Promise.all(
      [id, id, other].map((each) => follow(on.running.port, `/api/refits/${each}/live`)),
    );
    const [a, b, c] = streams as [(typeof streams)[0], (typeof streams)[0], (typeof streams)[0]];
    expect(a.headers['content-type']).toBe('text/event-stream; charset=utf-8');
    expect(a.headers['content-security-policy']).toContain("default-src 'none'");
    await Promise.all(streams.map((each) => each.until(() => each.events.length === 1)));
    await edits(on, id, 5);
    for (const each of [a, b]) {
      await each.until(() => each.events.length === 6);
      expect(each.events[0]).toMatchObject({ event: 'head', data: '{"head":0}' });
      expect(each.events.slice(1).map((e) => [e.event, e.id, JSON.parse(e.data).edit.number])).toEqual(
        [1, 2, 3, 4, 5].map((n) => ['edit', String(n), n]),
      );
      expect(JSON.parse(each.events[5]!.data).head).toBe(5);
    }
    expect(c.events.length).toBe(1);
  });

  test('derived: one who was cut off catches up from the last that came, without a gap', async () => {
    const on = await trial();
    const id = await on.lathe();
    const at = `/api/refits/${id}/live`;
    await edits(on, id, 3);
    const first = await follow(on.running.port, at);
    await first.until(() => first.events.length === 1);
    expect(first.events[0]).toEqual({ id: '3', event: 'head', data: '{"head":3}' });
    first.leave();
    await edits(on, id, 260);
    const [again, asked] = await Promise.all([
      follow(on.running.port, at, { 'last-event-id': '3' }),
      follow(on.running.port, `${at}?after=3`),
      edits(on, id, 20),
    ]);
    for (const each of [again, asked]) {
      await each.until(() => each.events.at(-1)?.id === '283');
      expect(each.events.slice(1).map((e) => Number(e.id))).toEqual(
        Array.from({ length: 280 }, (_, i) => i + 4),
      );
    }
    expect((await on.call('GET', `${at}?after=x`)).status).toBe(422);
  });

  test('derived: signs of life come, and closing says goodbye', async () => {
    const on = await trial({ beat: 20 });
    const id = await on.lathe();
    const stream = await follow(on.running.port, `/api/refits/${id}/live`);
    await stream.until(() => stream.comments.length >= 2);
    const began = performance.now();
    await on.running.close();
    await stream.until(() => stream.events.at(-1)?.event === 'gone');
    expect(performance.now() - began).toBeLessThan(2_000);
  });
});
