import type { StartView } from '../../../core/contract/plan.ts';
import { Link } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';

type Item = StartView['due'][number];

/** What is promised for the next weeks. */
export function Due({ due }: Pick<StartView, 'due'>) {
  return (
    <section aria-labelledby="start-due">
      <h2 id="start-due">Due next</h2>
      <Items items={due} none="Nothing is promised for the next 30 days." />
    </section>
  );
}

/** What came in the last weeks. */
export function Came({ came }: Pick<StartView, 'came'>) {
  return (
    <section aria-labelledby="start-came">
      <h2 id="start-came">Came lately</h2>
      <Items items={came} none="Nothing came in the last three weeks." />
    </section>
  );
}

function Items({ items, none }: { readonly items: readonly Item[]; readonly none: string }) {
  if (items.length === 0) return <p className="soft">{none}</p>;
  return (
    <ul className="start-list">
      {items.map((item) => (
        <li key={`${item.on} ${item.text} ${item.order} ${item.part}`} className="start-dated">
          {item.on === null ? <span className="soft">no date</span> : <DateText date={item.on} />}
          <ItemText item={item} />
        </li>
      ))}
    </ul>
  );
}

function ItemText({ item: { order, part, text } }: { readonly item: Item }) {
  if (order !== null) {
    return (
      <Link to="/orders" params={{ order }}>
        {text}
      </Link>
    );
  }
  if (part !== null) {
    return (
      <Link to="/parts" params={{ part }}>
        {text}
      </Link>
    );
  }
  return <span>{text}</span>;
}
