import type { Bounds } from '../geometry/region';
import { type Lain, lain, type MachinePoint, onMachine } from '../plan/laid-piece';
import type { BlankPoint } from '../toolpath/place';
import { reachOnMachine } from './reach-line';

/** Longest line (characters) that the standard allows. */
const LONGEST = 256;

/**
 * What every comment begins with: some machines carry out a comment of which the first word is one of theirs, and a
 * title is anybody's.
 */
const OURS = 'kerfbook: ';

/**
 * All that a comment may hold besides spaces. Left out are brackets, what a shell acts on, should it ever be handed
 * the file, and the signs that machines obey wherever they come along the wire.
 */
const UNSAFE = /[^A-Za-z0-9 .,:%+/=_-]/g;

export interface Rs274Options {
    /** Comment lines for the head of the file. */
    readonly comments: readonly string[];
    /** Power (W) that the highest S stands for. */
    readonly fullPower: number;
    /** The setting, a part of the whole, that gives a power (W); goes with the power if absent. */
    readonly settingFor?: (watts: number) => number;
    /** Highest S (default 1000). */
    readonly fullScale?: number;
    /** The machine lowers the power with the speed by itself, which M4 switches on; M3, and constant power, if absent. */
    readonly followsSpeed?: boolean;
    /** The sentence that says where X 0 Y 0 lies. */
    readonly origin: string;
    /** How the blank on the bed lies against the plan; as planned if absent. */
    readonly lie?: Lain;
}

export type Rs274Problem = 'not-finite' | 'power-over' | 'incomplete-hatch' | 'too-long';

/** Collects lines, and says only what has changed. */
export class Rs274Lines {
    private readonly lines: string[] = [];
    private readonly full: number;
    private readonly on: 'M3' | 'M4';
    private motion = '';
    private x = '';
    private y = '';
    private power = '';
    private speed = '';
    private airOn = false;
    private height = 0;
    private driven = true;
    failed: Rs274Problem | undefined;

    /** @param origin where X 0 Y 0 lies (mm, y downwards); the file has Y upwards, as machines do */
    constructor(
        private readonly options: Rs274Options,
        private readonly origin: BlankPoint,
    ) {
        this.full = options.fullScale ?? 1000;
        this.on = options.followsSpeed === true ? 'M4' : 'M3';
    }

    /** @param reach what the head moves over (mm, y downwards), the origin included */
    head(focusMoves: boolean, reach: Bounds | undefined): void {
        // Nobody's words on the first line, which is what a machine or a shell looks at first.
        this.comment('machine file in RS-274/NGC');
        for (const comment of this.options.comments) this.comment(comment);
        this.comment(`millimetres: ${this.options.origin}`);
        if (reach !== undefined) {
            this.comment(
                `the head moves over ${reachOnMachine(this.lieReach(reach), this.origin)}, run-up and way back included`,
            );
        }
        const [most, watts] = [decimal(this.full, 0), decimal(this.options.fullPower, 3)];
        this.comment(
            this.options.settingFor === undefined
                ? `S is the power of the beam, S 0 to ${most} stands for 0 to ${watts} W. F is in mm a minute`
                : `S is the setting of the beam, S 0 to ${most} stands for 0 to 100 %, along a power curve up to ${watts} W. F is in mm a minute`,
        );
        this.comment(
            this.options.followsSpeed === true
                ? 'M4: the machine lowers the power where the head is slower than F'
                : 'M3: constant power. Along outlines S goes down where the head is slower',
        );
        if (focusMoves) this.comment('Z moves the focus: Z 0 is on the face of the blank, Z below 0 in the wood');
        this.lines.push('G21', 'G90', 'G94', 'G0', 'S0', this.on);
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

    comment(text: string): void {
        const plain = text
            .normalize('NFKD')
            .replaceAll('&', '+')
            .replaceAll(';', ',')
            .replace(/[^\x20-\x7e']|'/g, '')
            .replace(UNSAFE, ' ');
        this.lines.push(`(${OURS}${plain.slice(0, LONGEST - 2 - OURS.length)})`);
    }

    air(on: boolean): void {
        if (on !== this.airOn) this.lines.push(on ? 'M7' : 'M9');
        this.airOn = on;
    }

    /**
     * Brings the focus to a height below the face (mm): by Z, or by stopping for somebody to do it. Nothing blows on
     * the wood during a stop; the air is off behind it.
     */
    focus(height: number, byHand: boolean): void {
        if (height === this.height) return;
        this.power0();
        this.driven = !byHand;
        if (byHand) {
            const where = height === 0 ? 'back to the face' : `to ${decimal(height, 2)} mm below the face`;
            this.comment(`stop: bring the focus ${where}, then go on`);
            this.lines.push('M5');
            this.air(false);
            this.lines.push('M0', this.on);
        } else {
            this.lines.push(`G0 Z${decimal(-height, 3)}`);
            this.motion = 'G0';
        }
        this.height = height;
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
        this.move('G1', x, y, `F${decimal(speed * 60, 3)}`, sWord(power, this.options));
    }

    private placeOf(x: number, y: number): MachinePoint {
        const planned = onMachine({ x, y }, this.origin);
        return this.options.lie === undefined ? planned : lain(planned, this.options.lie);
    }

    /** A box around all of it, turned, with X 0 Y 0, where the head begins and ends. */
    private lieReach(reach: Bounds): Bounds {
        if (this.options.lie === undefined) return reach;
        const { minX, minY, maxX, maxY } = reach;
        const corners = [this.placeOf(minX, minY), this.placeOf(maxX, minY), this.placeOf(minX, maxY), this.placeOf(maxX, maxY)];
        const xs = [0, ...corners.map(({ x }) => x)].map((x) => x + this.origin.x);
        const ys = [0, ...corners.map(({ y }) => y)].map((y) => this.origin.y - y);
        return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
    }

    private move(motion: string, x: number, y: number, speed: string, power: string): void {
        if (!(Math.abs(x) < 1e6 && Math.abs(y) < 1e6)) {
            this.failed = 'not-finite';
            return;
        }
        const at = this.placeOf(x, y);
        const toX = `X${decimal(at.x, 4)}`;
        const toY = `Y${decimal(at.y, 4)}`;
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

export type PowerScale = Pick<Rs274Options, 'fullPower' | 'settingFor' | 'fullScale'>;

function settingOf(watts: number, { fullPower, settingFor, fullScale = 1000 }: PowerScale): number {
    const setting = watts === 0 ? 0 : (settingFor?.(watts) ?? watts / fullPower);
    return Number((setting * fullScale).toFixed(2));
}

function sWord(watts: number, scale: PowerScale): string {
    return `S${decimal(settingOf(watts, scale), 2)}`;
}

/** "S246.8 = 24.68 %": a power as the file has it, and the same as a part of the whole, neither rounded further. For comments. */
export function powerWords(watts: number, scale: PowerScale): string {
    const ratio = settingOf(watts, scale) / (scale.fullScale ?? 1000);
    return `${sWord(watts, scale)} = ${decimal(100 * ratio, 5)} %`;
}

/** A number as RS-274 wants it: no exponent, no minus before zero, no needless noughts. */
function decimal(value: number, places: number): string {
    const text = value.toFixed(places);
    const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
    return short === '-0' ? '0' : short;
}
