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

/** The ports by whose they are: the engine's own places first, then the part lines. */
export function PortTables({ ports }: { readonly ports: readonly PortRow[] }) {
  const groups = [...Map.groupBy(ports, ({ part, owner }) => `${part ?? ''} ${owner}`).values()].toSorted(
    ([one], [other]) =>
      Number(one?.part !== null) - Number(other?.part !== null) ||
      (one?.owner ?? '').localeCompare(other?.owner ?? '', 'en'),
  );
  return groups.map((rows) => {
    const [first] = rows;
    if (first === undefined) return null;
    return (
      <SimpleTable
        key={`${first.part ?? ''} ${first.owner}`}
        caption={first.part === null ? `${first.owner || 'Engine'} (the engine’s own)` : first.owner}
        columns={columns}
        rows={rows}
        rowKey={({ id }) => String(id)}
      />
    );
  });
}
