import { parseSync } from 'vite';

/** A node of the ESTree that the bundler's parser gives, seen without its many shapes. */
export interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

const isNode = (value: unknown): value is SyntaxNode =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

/** The fields of a node that hold nodes, in order. */
export function childrenOf(node: SyntaxNode): readonly (readonly [field: string, child: SyntaxNode])[] {
  return Object.entries(node).flatMap(([field, value]) =>
    (Array.isArray(value) ? value : [value]).filter(isNode).map((child) => [field, child] as const),
  );
}

export function child(node: SyntaxNode, field: string): SyntaxNode | null {
  const value = node[field];
  return isNode(value) ? value : null;
}

export function parse(file: string, text: string): SyntaxNode {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  return program as unknown as SyntaxNode;
}

/** Without the brackets round it and what only the type checker reads. */
export function bare(node: SyntaxNode): SyntaxNode {
  const inner = child(node, 'expression');
  const isWrapping = /^(Parenthesized|TSAs|TSSatisfies|TSNonNull)Expression$/.test(node.type);
  return isWrapping && inner !== null ? bare(inner) : node;
}
