import { slipsOf } from './mutators.ts';
import { bare, child, childrenOf, parse, type SyntaxNode } from './syntax.ts';

/** One way of making one file wrong. */
export interface Mutant {
  /** Stays the same while the code round it changes: file, function, what is replaced by what, and which of the same. */
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly replacement: string;
  readonly line: number;
}

/** Written on one line. */
const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

const FUNCTION = /^(FunctionDeclaration|FunctionExpression|ArrowFunctionExpression)$/;
/** Nodes that hold names and types, and no value that a mutant could change. */
const PASSED_OVER = /^(TS(?!As|Satisfies|NonNull|ParameterProperty)|Import|ExportAll)/;

/** What a node names, if it names something that holds code. */
function nameOf(node: SyntaxNode): string | null {
  const named = child(node, 'id') ?? child(node, 'key');
  const isNaming = ['FunctionDeclaration', 'VariableDeclarator', 'MethodDefinition', 'Property'].includes(node.type);
  if (!isNaming || typeof named?.name !== 'string') return null;
  const value = child(node, 'init') ?? child(node, 'value');
  return node.type === 'FunctionDeclaration' || (value !== null && FUNCTION.test(value.type)) ? named.name : null;
}

/** Whether a field of a node is written to, or only names something. */
function isWrittenOrNamed(node: SyntaxNode, field: string): boolean {
  if (node.type === 'AssignmentExpression' || node.type === 'ForOfStatement') return field === 'left';
  if (node.type === 'UpdateExpression') return field === 'argument';
  return field === 'id' || (field === 'key' && node.computed !== true);
}

/** Every mutant of a file, in the order of its text. Text literals are left alone: most are ids, which types hold. */
export function mutantsOf(file: string, text: string, withNumbers: boolean): readonly Mutant[] {
  const mutants: Mutant[] = [];
  const seen = new Map<string, number>();
  const put = (node: SyntaxNode, within: string, mutator: string, replacement: string): void => {
    const said = `${file} | ${within} | ${mutator} | ${flat(text.slice(node.start, node.end))} -> ${flat(replacement)}`;
    const count = (seen.get(said) ?? 0) + 1;
    seen.set(said, count);
    const line = text.slice(0, node.start).split('\n').length;
    const name = count === 1 ? said : `${said} | ${count}`;
    mutants.push({ name, start: node.start, end: node.end, replacement, line });
  };
  const walk = (node: SyntaxNode, parent: SyntaxNode, field: string, within: string): void => {
    if (PASSED_OVER.test(node.type)) return;
    for (const { mutator, replacement } of slipsOf(node, parent, field, text, withNumbers))
      put(node, within, mutator, replacement);
    const inner = child(node, 'expression');
    if (node.type === 'ExpressionStatement' && inner !== null && !isSuper(inner))
      put(inner, within, 'removed', 'void 0');
    const name = nameOf(node) ?? within;
    for (const [at, below] of childrenOf(node)) if (!isWrittenOrNamed(node, at)) walk(below, node, at, name);
  };
  const program = parse(file, text);
  walk(program, program, '', '');
  return mutants;
}

const isSuper = (node: SyntaxNode): boolean => child(bare(node), 'callee')?.type === 'Super';

/** Where a loop begins its round: `braced` when a block stands there already. */
interface LoopBody {
  readonly start: number;
  readonly end: number;
  readonly braced: boolean;
}

function loopBodies(file: string, text: string): readonly LoopBody[] {
  const bodies: LoopBody[] = [];
  const walk = (node: SyntaxNode): void => {
    const body = /^(For|ForOf|ForIn|While|DoWhile)Statement$/.test(node.type) ? child(node, 'body') : null;
    if (body !== null) bodies.push({ start: body.start, end: body.end, braced: body.type === 'BlockStatement' });
    for (const [, below] of childrenOf(node)) walk(below);
  };
  walk(parse(file, text));
  return bodies;
}

export interface NumberedMutant {
  readonly number: number;
  readonly mutant: Mutant;
}

/** The text with a switch at each place: `MUTATION.on(number)` chooses the mutant. Every round of a loop is counted. */
export function instrumented(file: string, text: string, mutants: readonly NumberedMutant[]): string {
  const sites = new Map<string, NumberedMutant[]>();
  for (const numbered of mutants) {
    const key = `${numbered.mutant.start} ${numbered.mutant.end}`;
    sites.set(key, [...(sites.get(key) ?? []), numbered]);
  }
  // at one place the brackets that open last close first: outer sites before inner ones, loops outside both
  const inserts: { readonly at: number; readonly rank: number; readonly text: string }[] = [];
  for (const [key, variants] of sites) {
    const [start = 0, end = 0] = key.split(' ').map(Number);
    const choices = variants.map(({ number, mutant }) => `MUTATION.on(${number})?(${mutant.replacement}):`).join('');
    inserts.push({ at: start, rank: end - start, text: `(${choices}(` });
    inserts.push({ at: end, rank: start - end, text: '))' });
  }
  for (const { start, end, braced } of loopBodies(file, text)) {
    if (braced) inserts.push({ at: start + 1, rank: Number.POSITIVE_INFINITY, text: 'MUTATION.tick();' });
    else {
      inserts.push({ at: start, rank: Number.POSITIVE_INFINITY, text: '{MUTATION.tick();' });
      inserts.push({ at: end, rank: Number.NEGATIVE_INFINITY, text: '}' });
    }
  }
  // what closes comes before what opens at the same place, inner before outer; what opens, outer before inner
  const ordered = inserts.sort((one, other) => {
    if (one.at !== other.at) return one.at - other.at;
    const [closes, otherCloses] = [one.rank < 0, other.rank < 0];
    if (closes !== otherCloses) return closes ? -1 : 1;
    return other.rank - one.rank;
  });
  let result = '';
  let from = 0;
  for (const { at, text: inserted } of ordered) {
    result += text.slice(from, at) + inserted;
    from = at;
  }
  return result + text.slice(from);
}
