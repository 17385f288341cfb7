import type { Block, TableBlock, Told } from './blocks';
import type { Put } from './place-blocks';

/** Widths of a table's columns, px as measured; `null`: as the browser finds them. */
export type Columns = readonly number[] | null;

interface BlockOnPageProps {
  block: Block;
  put: Put;
  told: Told;
  columns: Columns;
}

/** A block, or the rows of it that stand on one page. */
export function BlockOnPage({ block, put, told, columns }: BlockOnPageProps) {
  const style = put.shrink < 1 ? { zoom: put.shrink } : undefined;
  const name = `block${block.tight ? ' tight' : ''}${block.kind === 'page' ? ' whole' : ''}`;
  if (block.kind === 'table') {
    const [from, to] = put.rows ?? [0, block.rows.length];
    return (
      <div className={name} style={style}>
        <PaperTable block={block} from={from} to={to} columns={columns} />
      </div>
    );
  }
  const { content } = block;
  return (
    <div className={name} style={style}>
      {typeof content === 'function' ? content(told) : content}
    </div>
  );
}

/** A table, or some of its rows under its head again. */
export function PaperTable(props: {
  block: TableBlock;
  from: number;
  to: number;
  columns: Columns;
}) {
  const { block, from, to, columns } = props;
  return (
    <table
      className={`paper-table ${block.className ?? ''}`}
      style={columns ? { tableLayout: 'fixed' } : undefined}
    >
      <caption className="unseen">{block.caption}</caption>
      {columns && (
        <colgroup>
          {columns.map((width, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place.
            <col key={i} style={{ width: `${width}px` }} />
          ))}
        </colgroup>
      )}
      <thead>{block.head}</thead>
      <tbody>{block.rows.slice(from, to)}</tbody>
    </table>
  );
}
