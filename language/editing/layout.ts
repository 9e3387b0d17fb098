/** How a text is laid out around a place: lines, indentation, line breaks. Offsets count UTF-16 units. */
export class Layout {
    readonly lineBreak: string;
    /** One step of indentation, as this text has it. */
    readonly indent: string;

    constructor(readonly text: string) {
        this.lineBreak = text.includes('\r\n') ? '\r\n' : '\n';
        this.indent = /^(\t| {2,4})\S/m.exec(text)?.[1] ?? '  ';
    }

    lineStart(offset: number): number {
        return this.text.lastIndexOf('\n', offset - 1) + 1;
    }

    /** The offset of the line break that ends the line, or of the end of the text. */
    lineEnd(offset: number): number {
        const end = this.text.indexOf('\n', offset);
        if (end < 0) return this.text.length;
        return this.text[end - 1] === '\r' && end > offset ? end - 1 : end;
    }

    nextLine(offset: number): number {
        const end = this.text.indexOf('\n', offset);
        return end < 0 ? this.text.length : end + 1;
    }

    indentAt(offset: number): string {
        const start = this.lineStart(offset);
        return /^[ \t]*/.exec(this.text.slice(start, this.lineEnd(start)))?.[0] ?? '';
    }

    /** Whether nothing but blanks stands beside this span on its lines. */
    standsAlone(offset: number, end: number): boolean {
        const before = this.text.slice(this.lineStart(offset), offset);
        const after = this.text.slice(end, this.lineEnd(end));
        return before.trim() === '' && after.trim() === '';
    }
}
