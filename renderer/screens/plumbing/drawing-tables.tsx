import type { SchematicView } from '../../../core/contract/plumbing.ts';
import { Link } from '../../app/route.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import type { SchematicEdge, SchematicNode } from './drawing-shapes.ts';

const Lacks = ({ wrong }: Pick<SchematicNode, 'wrong'>) =>
  wrong.length === 0 ? (
    'nothing'
  ) : (
    <ul className="drawing-lacks">
      {wrong.map(({ kind, text }) => (
        <li key={text}>
          <strong>{kind === 'wrong' ? 'Wrong' : 'Missing'}.</strong> {text}
        </li>
      ))}
    </ul>
  );

function componentColumns({ edges }: SchematicView): readonly Column<SchematicNode>[] {
  const linesAt = (node: string, port: string): string =>
    edges
      .filter(({ from, to }) => [from, to].some((end) => end.node === node && end.port === port))
      .map(({ name }) => name)
      .join(', ');
  return [
    {
      id: 'component',
      title: 'Component',
      rowHeader: true,
      cell: ({ title, part }) =>
        part === null ? (
          title
        ) : (
          <Link to="/parts" params={{ part }}>
            {title}
          </Link>
        ),
      sortBy: ({ title }) => title,
    },
    { id: 'standing', title: 'Stands', cell: ({ standing }) => standing, sortBy: ({ standing }) => standing },
    {
      id: 'ports',
      title: 'Ports and what joins them',
      cell: ({ id, ports }) => (
        <ul className="drawing-lacks">
          {ports.map((port) => (
            <li key={port.id}>
              {port.port === null ? (
                port.name
              ) : (
                <Link to="/fit" params={{ port: port.port }}>
                  {port.name}
                </Link>
              )}
              {port.text !== '' && ` (${port.text})`}:{' '}
              {linesAt(id, port.id) || (port.open ? 'nothing' : 'another part, without a line')}
            </li>
          ))}
        </ul>
      ),
    },
    { id: 'wrong', title: 'Missing or wrong', cell: ({ wrong }) => <Lacks wrong={wrong} /> },
  ];
}

function lineColumns(view: SchematicView): readonly Column<SchematicEdge>[] {
  const end = ({ node, port }: SchematicEdge['from']): string => {
    const owner = view.nodes.find(({ id }) => id === node);
    return [owner?.title, owner?.ports.find(({ id }) => id === port)?.name].filter(Boolean).join(', ');
  };
  return [
    {
      id: 'name',
      title: 'Line',
      rowHeader: true,
      cell: ({ line, name }) => (
        <Link to="/plumbing" params={{ line }}>
          {name}
        </Link>
      ),
      sortBy: ({ name }) => name,
    },
    { id: 'fluid', title: 'Fluid', cell: ({ fluid }) => fluid || 'not said', sortBy: ({ fluid }) => fluid },
    { id: 'from', title: 'From', cell: ({ from }) => end(from), sortBy: ({ from }) => end(from) },
    { id: 'to', title: 'To', cell: ({ to }) => end(to), sortBy: ({ to }) => end(to) },
    { id: 'hose', title: 'Hose', cell: ({ hose }) => hose },
    { id: 'standing', title: 'Stands', cell: ({ standing }) => standing, sortBy: ({ standing }) => standing },
    { id: 'wrong', title: 'Missing or wrong', cell: ({ wrong }) => <Lacks wrong={wrong} /> },
  ];
}

/** Everything that the drawing shows, for those who don't see it. */
export function DrawingTables({ view }: { readonly view: SchematicView }) {
  return (
    <>
      <SimpleTable
        caption="Components and their ports"
        columns={componentColumns(view)}
        rows={view.nodes}
        rowKey={({ id }) => id}
      />
      <SimpleTable
        caption="Lines from port to port"
        columns={lineColumns(view)}
        rows={view.edges}
        rowKey={({ line }) => String(line)}
      />
    </>
  );
}
