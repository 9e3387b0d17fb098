import type * as ast from '../generated/ast';

/** By what a step is known again: what it does, to what it does it, and which of several. */
export interface Known {
    readonly kind: string;
    /** The name or the text; absent where it stands for any. */
    readonly of?: string | undefined;
    readonly nth?: string | undefined;
    /** The name of this one step, where it has one. */
    readonly called?: string | undefined;
}

/** A written step as a variant would name it: `engrave pocket`, `sand tray`, `wait "the glue cures"`. */
export function knownAs(step: ast.Step): Known {
    switch (step.$type) {
        case 'Engrave':
        case 'Cut':
            return { kind: step.$type.toLowerCase(), of: step.name };
        case 'Fill':
            return { kind: 'fill', of: step.pocket?.$refText, nth: step.nth, called: step.called };
        case 'Inlay':
            return { kind: 'inlay', of: step.relief?.$refText, nth: step.nth, called: step.called };
        case 'Follow':
            return { kind: 'follow', of: step.routine?.$refText, nth: step.nth, called: step.called };
        case 'Check':
            return { kind: 'check', of: step.step?.$refText, nth: step.nth, called: step.called };
        case 'Wait':
            return { kind: 'wait', of: step.reason, nth: step.nth, called: step.called };
        case 'Do':
            return { kind: 'do', of: step.text, nth: step.nth, called: step.called };
        default:
            return { kind: step.$type.toLowerCase(), of: step.blank?.$refText, nth: step.nth, called: step.called };
    }
}

export function pointedAt(at: ast.StepAt): Known {
    const of = (at.carved ?? at.pocket ?? at.relief ?? at.blank ?? at.routine)?.$refText ?? at.text;
    return { kind: at.kind, of, nth: at.nth, called: at.called };
}

/** As a person would say it, and as it can be written behind `after` or `without`. */
export function spoken({ kind, of, called }: Known): string {
    const name = called === undefined ? '' : ` called ${called}`;
    if (of === undefined) return `${kind}${name}`;
    if (kind === 'wait') return called === undefined ? `${kind} "${of}"` : `${kind}${name}`;
    return kind === 'do' ? `${kind} "${of}"${name}` : `${kind} ${of}${name}`;
}
