import type { PortRow } from '../../../core/contract/fits.ts';
import { parsePort } from '../../../core/fit/parse.ts';
import { Link } from '../../app/route.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { roleChoices } from './fit-words.ts';
import { sizeText } from './port-text.ts';

const columns: readonly Column<PortRow>[] = [
  {
    id: 'name',
    title: 'Port',
    rowHeader: true,
    sortBy: ({ name }) => name,
    cell: ({ id, name }) => (
      <Link to="/fit" params={{ port: id }}>
        {name}
      </Link>
    ),
  },
  {
    id: 'designation',
    title: 'Thread or end',
    cell: ({ canonical, designation, problem }) =>
      problem === '' ? (
        canonical || designation
      ) : (
        <span className="fit-title">
          {designation}
          <span className="fit-under fit-unread">Can’t be read: {problem}</span>
        </span>
      ),
  },
  {
    id: 'measures',
    title: 'Measures',
    cell: ({ designation, role }) => {
      const read = parsePort(designation, { role });
      return read.ok ? sizeText(read.port) : '';
    },
  },
  {
    id: 'role',
    title: 'For',
    cell: ({ role, medium }) => medium || (roleChoices.find(({ value }) => value === role)?.label ?? role),
  },
  { id: 'connections', title: 'Connections', figures: true, cell: ({ connections }) => connections.length },
];

const owned = (title: string): Column<PortRow> => ({
  id: 'owner',
  title,
  sortBy: ({ owner }) => owner,
  cell: ({ owner, part }) =>
    part === null ? (
      owner
    ) : (
      <span className="fit-title">
        <Link to="/parts" params={{ part }}>
          {owner}
        </Link>
      </span>
    ),
});

const byOwner = (rows: readonly PortRow[]): readonly PortRow[] =>
  rows.toSorted((one, other) => one.owner.localeCompare(other.owner, 'en') || one.name.localeCompare(other.name, 'en'));

/** The ports by whose they are: the engine's own by place first, then those of the part lines. */
export function PortTables({ ports }: { readonly ports: readonly PortRow[] }) {
  const groups = [
    { caption: 'The engine’s own, by place', title: 'Place', rows: ports.filter(({ part }) => part === null) },
    { caption: 'Of part lines', title: 'Part', rows: ports.filter(({ part }) => part !== null) },
  ];
  return groups
    .filter(({ rows }) => rows.length > 0)
    .map(({ caption, title, rows }) => (
      <SimpleTable
        key={caption}
        caption={caption}
        columns={[owned(title), ...columns]}
        rows={byOwner(rows)}
        rowKey={({ id }) => String(id)}
      />
    ));
}
