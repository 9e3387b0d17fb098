/** Longest line (characters) that the standard allows. */
const LONGEST = 256;

export interface Rs274Options {
    /** Comment lines for the head of the file. */
    readonly comments: readonly string[];
    /** Power (W) that the highest S stands for. */
    readonly fullPower: number;
    /** The setting, a part of the whole, that gives a power (W); goes with the power if absent. */
    readonly settingFor?: (watts: number) => number;
    /** Highest S (default 1000). */
    readonly fullScale?: number;
    /** Height of the blank (mm): its lower left corner becomes the origin, with Y upwards as machines have it. */
    readonly height: number;
}

export type Rs274Problem = 'not-finite' | 'power-over' | 'incomplete-hatch' | 'too-long';

/** Collects lines, and says only what has changed. */
export class Rs274Lines {
    private readonly lines: string[] = [];
    private readonly full: number;
    private motion = '';
    private x = '';
    private y = '';
    private power = '';
    private speed = '';
    private airOn = false;
    private height = 0;
    private driven = true;
    failed: Rs274Problem | undefined;

    constructor(private readonly options: Rs274Options) {
        this.full = options.fullScale ?? 1000;
    }

    head(focusMoves: boolean): void {
        for (const comment of this.options.comments) this.comment(comment);
        this.comment('millimetres; origin at the lower left corner of the blank, X to the right, Y away from you');
        const [most, watts] = [decimal(this.full, 0), decimal(this.options.fullPower, 3)];
        this.comment(
            this.options.settingFor === undefined
                ? `S is the power of the beam: S 0 to ${most} stands for 0 to ${watts} W; F in mm a minute`
                : `S is the setting of the beam: S 0 to ${most} stands for 0 to 100 %, along a power curve up to ${watts} W; F in mm a minute`,
        );
        if (focusMoves) this.comment('Z moves the focus: Z 0 is on the face of the blank, Z below 0 in the wood');
        this.lines.push('G21', 'G90', 'G94', 'G0', 'S0', 'M3');
        this.motion = 'G0';
        this.power = 'S0';
    }

    foot(): void {
        this.power0();
        this.lines.push('M5');
        this.air(false);
        if (this.height !== 0 && this.driven) this.lines.push('G0 Z0');
        else if (this.height !== 0) this.comment('bring the focus back to the face');
        this.lines.push('G0 X0 Y0', 'M2');
    }

    /** Only plain printable characters, and no bracket inside of the brackets. */
    comment(text: string): void {
        const plain = text
            .normalize('NFKD')
            .replace(/[()]/g, ' ')
            .replace(/[^\x20-\x7e]/g, '')
            .slice(0, LONGEST - 2);
        this.lines.push(`(${plain})`);
    }

    air(on: boolean): void {
        if (on !== this.airOn) this.lines.push(on ? 'M7' : 'M9');
        this.airOn = on;
    }

    /** Brings the focus to a height below the face (mm): by Z, or by stopping for somebody to do it. */
    focus(height: number, byHand: boolean): void {
        if (height === this.height) return;
        this.power0();
        this.driven = !byHand;
        if (byHand) {
            const where = height === 0 ? 'back to the face' : `to ${decimal(height, 2)} mm below the face`;
            this.comment(`stop: bring the focus ${where}, then go on`);
            this.lines.push('M5', 'M0', 'M3');
        } else {
            this.lines.push(`G0 Z${decimal(-height, 3)}`);
            this.motion = 'G0';
        }
        this.height = height;
    }

    private settingFor(power: number): number {
        return power === 0 ? 0 : (this.options.settingFor?.(power) ?? power / this.options.fullPower);
    }

    private power0(): void {
        if (this.power !== 'S0') this.lines.push('S0');
        this.power = 'S0';
    }

    rapid(x: number, y: number): void {
        this.power0();
        this.move('G0', x, y, '', '');
    }

    feed(x: number, y: number, speed: number, power: number): void {
        this.move('G1', x, y, `F${decimal(speed * 60, 3)}`, `S${decimal(this.settingFor(power) * this.full, 2)}`);
    }

    private move(motion: string, x: number, y: number, speed: string, power: string): void {
        if (!(Math.abs(x) < 1e6 && Math.abs(y) < 1e6)) {
            this.failed = 'not-finite';
            return;
        }
        const toX = `X${decimal(x, 4)}`;
        const toY = `Y${decimal(this.options.height - y, 4)}`;
        if (toX === this.x && toY === this.y) return;
        let line = motion === this.motion ? '' : motion;
        if (toX !== this.x) line += ` ${toX}`;
        if (toY !== this.y) line += ` ${toY}`;
        if (speed !== '' && speed !== this.speed) line += ` ${speed}`;
        if (power !== '' && power !== this.power) line += ` ${power}`;
        this.lines.push(line.trimStart());
        this.motion = motion;
        this.x = toX;
        this.y = toY;
        if (speed !== '') this.speed = speed;
        if (power !== '') this.power = power;
    }

    text(): string {
        return `${this.lines.join('\n')}\n`;
    }
}

/** A number as RS-274 wants it: no exponent, no minus before zero, no needless noughts. */
function decimal(value: number, places: number): string {
    const text = value.toFixed(places);
    const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
    return short === '-0' ? '0' : short;
}
