import type { SpanEdit } from './text-edits';

/** The edit that puts a block at the end of a text, one empty line behind what stands there. */
export function atEnd(text: string, block: string): SpanEdit {
    const lineBreak = text.includes('\r\n') ? '\r\n' : '\n';
    const gap = text === '' ? '' : /\n[ \t]*\r?\n[ \t]*$/.test(text) ? '' : /\n[ \t]*$/.test(text) ? '\n' : '\n\n';
    return { offset: text.length, length: 0, text: `${gap}${block}`.replaceAll('\n', lineBreak) };
}
