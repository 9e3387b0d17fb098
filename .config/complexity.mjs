/**
 * How many independent paths lead through each function of a text (cyclomatic complexity; T. J. McCabe, A complexity measure, 1976, from
 * memory): one, and one more for each if, loop, case with a value, catch, `?:`, `&&`, `||` and `??`. A function within another counts
 * for itself. Optional chaining and defaults of parameters do not count: they are read as one thing.
 */
import { parseSync } from 'vite';

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression']);
const FORKS = new Set([
    ...['IfStatement', 'ConditionalExpression', 'LogicalExpression', 'CatchClause'],
    ...['ForStatement', 'ForInStatement', 'ForOfStatement', 'WhileStatement', 'DoWhileStatement'],
]);
const FORKING_ASSIGNMENTS = new Set(['&&=', '||=', '??=']);

/**
 * @param {string} file its ending says how the text is read
 * @param {string} source
 * @returns {{ name: string, line: number, paths: number }[]}
 */
export function pathsOf(file, source) {
    const found = [];
    const visit = (node, inside, parent) => {
        if (node === null || typeof node !== 'object') return;
        if (Array.isArray(node)) {
            for (const each of node) visit(each, inside, parent);
            return;
        }
        if (typeof node.type !== 'string') return;
        let here = inside;
        if (FUNCTIONS.has(node.type)) {
            const name = node.id?.name ?? parent?.key?.name ?? parent?.id?.name ?? 'a function without a name';
            here = { name, line: source.slice(0, node.start).split('\n').length, paths: 1 };
            found.push(here);
        } else if (here !== undefined && isFork(node)) here.paths++;
        for (const each of Object.values(node)) visit(each, here, node);
    };
    visit(parseSync(file, source, { astType: 'ts' }).program, undefined, undefined);
    return found;
}

function isFork({ type, test, operator }) {
    if (type === 'SwitchCase') return test !== null;
    return FORKS.has(type) || (type === 'AssignmentExpression' && FORKING_ASSIGNMENTS.has(operator));
}
