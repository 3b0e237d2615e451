import { bare, child, type SyntaxNode } from './syntax.ts';

/** How the text of one node is made wrong. */
export interface Slip {
  readonly mutator: string;
  readonly replacement: string;
}

const SWAPPED_ARITHMETIC: Readonly<Record<string, string>> = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '%': '*',
  '**': '*',
  '&': '|',
  '|': '&',
  '^': '&',
  '<<': '>>',
  '>>': '<<',
  '>>>': '<<',
};
const MOVED_BOUNDARY: Readonly<Record<string, string>> = { '<': '<=', '<=': '<', '>': '>=', '>=': '>' };
const SWAPPED_LOGIC: Readonly<Record<string, string>> = { '&&': '||', '||': '&&', '??': '&&' };
const SWAPPED_ASSIGNMENT: Readonly<Record<string, string>> = {
  '+=': '-=',
  '-=': '+=',
  '*=': '/=',
  '/=': '*=',
  '||=': '=',
  '&&=': '=',
  '??=': '=',
};
const SWAPPED_CALL: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  ceil: 'floor',
  floor: 'ceil',
  every: 'some',
  some: 'every',
  find: 'findLast',
  findLast: 'find',
  findIndex: 'findLastIndex',
};
/** Calls that may be left out: the function of its argument, and the method of the list it is called on. */
const LEFT_OUT_FUNCTIONS: ReadonlySet<string> = new Set(['abs', 'sqrt', 'sign', 'log', 'log1p', 'expm1', 'log2']);
const LEFT_OUT_METHODS: ReadonlySet<string> = new Set(['filter', 'sort', 'slice', 'reverse']);

const textOf = (node: SyntaxNode, text: string): string => text.slice(node.start, node.end);

const isText = (node: SyntaxNode | null): boolean =>
  node !== null && (node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string'));

/** A whole number by one, any other by a hundredth, a tolerance a million times too coarse and gone. */
function nudged(value: number): string[] {
  if (value !== 0 && Math.abs(value) <= 1e-6) return [String(value * 1e6), '0'];
  return Number.isInteger(value) && value < 1000 ? [String(value + 1)] : [String(value * 1.01)];
}

const forced = (mutator: string): Slip[] => ['true', 'false'].map((replacement) => ({ mutator, replacement }));

function ofBinary(node: SyntaxNode, text: string): Slip[] {
  const [left, right] = [child(node, 'left'), child(node, 'right')];
  const operator = String(node.operator);
  if (left === null || right === null) return [];
  const with_ = (other: string): string => `(${textOf(left, text)}) ${other} (${textOf(right, text)})`;
  if (operator === '===' || operator === '!==') return forced('equality');
  const boundary = MOVED_BOUNDARY[operator];
  if (boundary !== undefined) return [{ mutator: 'boundary', replacement: with_(boundary) }, ...forced('comparison')];
  const swapped = SWAPPED_ARITHMETIC[operator];
  if (swapped === undefined || isText(bare(left)) || isText(bare(right))) return [];
  return [{ mutator: 'arithmetic', replacement: with_(swapped) }];
}

function ofLogical(node: SyntaxNode, text: string): Slip[] {
  const [left, right] = [child(node, 'left'), child(node, 'right')];
  const swapped = SWAPPED_LOGIC[String(node.operator)];
  if (left === null || right === null || swapped === undefined) return [];
  const slips = [{ mutator: 'logic', replacement: `(${textOf(left, text)}) ${swapped} (${textOf(right, text)})` }];
  // a fallback of 0, [] or nothing mostly stands for what the type checker cannot know; any other is a figure of its own
  const isFallback = node.operator === '??' && !['Literal', 'ArrayExpression'].includes(bare(right).type);
  return isFallback ? [...slips, { mutator: 'fallback', replacement: textOf(left, text) }] : slips;
}

function ofCall(node: SyntaxNode, text: string): Slip[] {
  const callee = child(node, 'callee');
  const [object, property] = callee === null ? [null, null] : [child(callee, 'object'), child(callee, 'property')];
  const first = Array.isArray(node.arguments) ? (node.arguments[0] as SyntaxNode | undefined) : undefined;
  if (object === null || property === null || callee?.computed === true) return [];
  const name = String(property.name);
  const slips: Slip[] = [];
  const swapped = SWAPPED_CALL[name];
  if (swapped !== undefined) {
    const replacement = text.slice(node.start, property.start) + swapped + text.slice(property.end, node.end);
    slips.push({ mutator: 'call', replacement });
  }
  const isMath = textOf(object, text) === 'Math';
  if (isMath && LEFT_OUT_FUNCTIONS.has(name) && first !== undefined)
    slips.push({ mutator: 'left out', replacement: textOf(first, text) });
  if (!isMath && LEFT_OUT_METHODS.has(name)) slips.push({ mutator: 'left out', replacement: textOf(object, text) });
  return slips;
}

function ofAssignment(node: SyntaxNode, text: string): Slip[] {
  const [left, right] = [child(node, 'left'), child(node, 'right')];
  const swapped = SWAPPED_ASSIGNMENT[String(node.operator)];
  if (left === null || right === null || swapped === undefined || isText(bare(right))) return [];
  return [{ mutator: 'assignment', replacement: `${textOf(left, text)} ${swapped} ${textOf(right, text)}` }];
}

/** Whether a node stands where only its truth counts and is not made wrong as a comparison already. */
function isPlainTruth(node: SyntaxNode): boolean {
  const inner = bare(node);
  if (inner.type === 'LogicalExpression' || inner.type === 'UnaryExpression' || inner.type === 'Literal') return false;
  return !(inner.type === 'BinaryExpression' && /^[<>]=?$|^[!=]==$/.test(String(inner.operator)));
}

const TRUTH_FIELDS: Readonly<Record<string, readonly string[]>> = {
  IfStatement: ['test'],
  ConditionalExpression: ['test'],
  WhileStatement: ['test'],
  LogicalExpression: ['left', 'right'],
};

function ofPlace(node: SyntaxNode, parent: SyntaxNode, field: string): Slip[] {
  const isTruth = TRUTH_FIELDS[parent.type]?.includes(field) === true && parent.operator !== '??';
  const isNegated = parent.type === 'UnaryExpression' && parent.operator === '!';
  return (isTruth || isNegated) && isPlainTruth(node) ? forced('truth') : [];
}

/** Every way in which a node of the text is made wrong; with `withNumbers`, its numbers too. */
export function slipsOf(
  node: SyntaxNode,
  parent: SyntaxNode,
  field: string,
  text: string,
  withNumbers: boolean,
): readonly Slip[] {
  const here = ofPlace(node, parent, field);
  switch (node.type) {
    case 'BinaryExpression':
      return [...here, ...ofBinary(node, text)];
    case 'LogicalExpression':
      return [...here, ...ofLogical(node, text)];
    case 'CallExpression':
      return [...here, ...ofCall(node, text)];
    case 'AssignmentExpression':
      return [...here, ...ofAssignment(node, text)];
    case 'UpdateExpression': {
      const operand = textOf(child(node, 'argument') ?? node, text);
      const other = node.operator === '++' ? '--' : '++';
      return [{ mutator: 'update', replacement: node.prefix === true ? other + operand : operand + other }];
    }
    case 'UnaryExpression': {
      const operand = child(node, 'argument');
      return node.operator === '-' && operand !== null
        ? [...here, { mutator: 'sign', replacement: textOf(operand, text) }]
        : here;
    }
    case 'Literal':
      if (typeof node.value === 'boolean') return [{ mutator: 'boolean', replacement: String(!node.value) }];
      if (typeof node.value !== 'number' || !withNumbers) return here;
      return [...here, ...nudged(node.value).map((replacement) => ({ mutator: 'number', replacement }))];
    default:
      return here;
  }
}
