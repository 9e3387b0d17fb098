import type { Where } from '../../quantity/where';
import { betterOrWorse } from '../better-or-worse';
import type { Change } from '../change';
import { oneLine } from '../one-line';
import { ToPlace } from './links';
import { TableHead } from './table-head';

interface ChangeTableProps {
    readonly changes: readonly Change[];
    /** What follows from them. */
    readonly follows?: readonly Change[];
    /** Where the lines stand in the text, by label. */
    readonly lines?: Readonly<Record<string, Where>>;
}

/** Figures before and after; nothing where nothing differs. */
export function ChangeTable({ changes, follows = [], lines = {} }: ChangeTableProps) {
    if (changes.length + follows.length === 0) return null;
    return (
        <table class="changes">
            <TableHead columns={['what', 'before', 'after', 'difference']} />
            <tbody>
                {changes.map((change) => (
                    <Row key={change.label} change={change} kind="written" where={lines[change.label]} />
                ))}
                {follows.map((change) => (
                    <Row key={change.label} change={change} kind="follows" where={undefined} />
                ))}
            </tbody>
        </table>
    );
}

function Row({ change, kind, where }: { change: Change; kind: 'written' | 'follows'; where: Where | undefined }) {
    const { label, before, after, by } = change;
    const judged = betterOrWorse(change);
    return (
        <tr class={kind}>
            <td>
                <ToPlace where={where}>{oneLine(label)}</ToPlace>
            </td>
            <td>{before === undefined ? null : <del>{oneLine(before)}</del>}</td>
            <td>{after === undefined ? null : <ins>{oneLine(after)}</ins>}</td>
            <td class={judged}>
                {by}
                {judged === undefined ? null : ` ${judged}`}
            </td>
        </tr>
    );
}
