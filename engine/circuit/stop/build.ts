/** What compiling a circuit gathers: nodes by the name of their terminal, movers, contacts. */
import type { Contact, Doing, Mover } from './model.ts';
import type { Read } from './settings.ts';

export class Build {
  readonly nodes: string[] = [];
  readonly byName = new Map<string, number>();
  readonly movers: Mover[] = [];
  readonly contacts: Contact[] = [];

  node(element: string, terminal: string): number {
    const name = `${element}.${terminal}`;
    const known = this.byName.get(name);
    if (known !== undefined) return known;
    this.byName.set(name, this.nodes.length);
    return this.nodes.push(name) - 1;
  }

  mover(mover: Mover): number {
    return this.movers.push(mover) - 1;
  }

  hand(element: string, does: Doing, id = element): number {
    return this.mover({ id, element, kind: 'hand', a: -1, b: -1, pickUp: 0, dropOut: 0, does });
  }

  contact(
    element: string,
    from: string,
    to: string,
    mover: number,
    closedAt: 0 | 1,
    extra: Partial<Contact> = {},
  ): number {
    return (
      this.contacts.push({
        id: `${element} ${from}-${to}`,
        element,
        a: this.node(element, from),
        b: this.node(element, to),
        mover,
        closedAt,
        linked: false,
        main: false,
        fuse: false,
        doubled: false,
        ...extra,
      }) - 1
    );
  }

  /** Contacts that close as 13-14, 23-24 … and contacts that open as 11-12, 21-22 … or, beside a coil, 51-52, 61-62 … */
  contactsOf(
    element: string,
    mover: number,
    read: Read,
    openFrom: number,
    extra: Partial<Contact> = {},
  ): void {
    for (let n = 1; n <= (read.no ?? 0); n++) this.contact(element, `${n}3`, `${n}4`, mover, 1, extra);
    for (let n = 0; n < (read.nc ?? 0); n++)
      this.contact(element, `${openFrom + n}1`, `${openFrom + n}2`, mover, 0, extra);
  }
}
