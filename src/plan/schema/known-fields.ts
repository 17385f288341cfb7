/** What the schema knows about a document's fields: which are unknown, and in what order they go. */
import type * as v from 'valibot';
import { jsonPath, type PathStep } from './json-path';

/** The parts of a schema that are looked into here. */
interface Node {
  type: string;
  pipe?: readonly Node[];
  wrapped?: Node;
  entries?: Readonly<Record<string, Node>>;
  item?: Node;
  /** Of a record: what every one of its values is. */
  value?: Node;
  key?: string;
  options?: readonly Node[];
}

/** The schema that says which fields a value has: inside optionals and pipes, of the right variant. */
function resolve(node: Node, value: unknown): Node {
  if (node.wrapped) return resolve(node.wrapped, value);
  if (node.pipe) {
    const inner = node.pipe.find(
      (part) => part !== node && (part.entries || part.item || part.type === 'record'),
    );
    if (inner && !node.entries && !node.item) return resolve(inner, value);
  }
  if (node.type === 'variant' && node.key && typeof value === 'object' && value !== null) {
    const kind = (value as Record<string, unknown>)[node.key];
    const found = node.options?.find(
      (option) => (option.entries?.[node.key as string] as { literal?: unknown })?.literal === kind,
    );
    if (found) return found;
  }
  return node;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Paths of the fields the schema does not know. */
export function unknownFields(schema: v.GenericSchema, value: unknown): string[] {
  const found: string[] = [];
  const look = (node: Node, part: unknown, path: PathStep[]): void => {
    const known = resolve(node, part);
    if (Array.isArray(part)) {
      const { item } = known;
      if (item) for (const [i, one] of part.entries()) look(item, one, [...path, i]);
      return;
    }
    const { entries } = known;
    if (known.type === 'record' && known.value && isRecord(part)) {
      for (const [key, one] of Object.entries(part)) look(known.value, one, [...path, key]);
      return;
    }
    if (!entries || !isRecord(part)) return;
    for (const [key, one] of Object.entries(part)) {
      const entry = entries[key];
      if (entry && Object.hasOwn(entries, key)) look(entry, one, [...path, key]);
      else found.push(jsonPath([...path, key]));
    }
  };
  look(schema as unknown as Node, value, []);
  return found;
}

/**
 * The same value with its known fields in the schema's order and unknown ones after them; values by
 * names of the user's own in the order of the names.
 */
export function inOrder(schema: v.GenericSchema, value: unknown): unknown {
  const order = (node: Node | undefined, part: unknown): unknown => {
    const known = node && resolve(node, part);
    if (Array.isArray(part)) return known?.item ? part.map((one) => order(known.item, one)) : part;
    if (known?.type === 'record' && isRecord(part))
      return Object.fromEntries(
        Object.keys(part)
          .sort()
          .map((key) => [key, order(known.value, part[key])]),
      );
    if (!isRecord(part) || !known?.entries) return part;
    const { entries } = known;
    const first = Object.keys(entries).filter((key) => part[key] !== undefined);
    const rest = Object.keys(part).filter((key) => !Object.hasOwn(entries, key));
    return Object.fromEntries(
      [...first, ...rest].map((key) => [
        key,
        order(Object.hasOwn(entries, key) ? entries[key] : undefined, part[key]),
      ]),
    );
  };
  return order(schema as unknown as Node, value);
}
