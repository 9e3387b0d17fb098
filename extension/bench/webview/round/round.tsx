import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { BenchView, BlankView, InlayView, SectionView } from '../../../../shared/view/bench-view';
import type { RoundView } from '../../../../shared/view/round-view';
import { editor } from '../editor-link';
import { offerPicture } from '../page-body';
import { useWheel } from '../picture/canvas';
import { followPointer } from '../picture/follow-pointer';
import { hiddenInRound, type Shown } from '../picture/shown';
import { useTurning } from '../picture/use-turning';
import { useSize } from '../use-size';
import { comingTogether } from './coming-together';
import { loadRoundChunk } from './load-chunk';
import { closer, firstOrbit, moved, type Orbit, orbitByKey, turned } from './orbit';
import type { RoundAsker } from './round-asker';
import type { RoundScene, RoundViewer } from './scene';
import { useInSight } from './use-in-sight';

interface RoundProps {
    readonly view: BenchView;
    readonly frameIndex: number;
    readonly blank: BlankView;
    readonly section: SectionView;
    readonly rounds: RoundAsker;
    readonly hidden: readonly Shown[];
}

/** The piece in the round: loaded and worked out only when somebody opens it. */
export function Round(props: RoundProps) {
    const [open, setOpen] = useState(false);
    const section = useRef<HTMLElement>(null);
    const inSight = useInSight(section);
    return (
        <section class="round" aria-label="In the round" ref={section}>
            <h2>In the round</h2>
            <p class="turning">
                <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
                    {open ? 'Close' : 'Show it in the round'}
                </button>
            </p>
            {open && <Opened {...props} inSight={inSight} />}
        </section>
    );
}

function Opened({ view, frameIndex, blank, section, rounds, hidden, inSight }: RoundProps & { readonly inSight: boolean }) {
    const wish = { text: view.textVersion, recipe: view.recipe, hidden: hiddenInRound(hidden) };
    const last = useRef<RoundView | undefined>(undefined);
    // Out of sight it stays as it was.
    const answer =
        inSight || last.current === undefined ? rounds.get({ ...wish, frame: frameIndex, blank: blank.name }) : undefined;
    if (typeof answer === 'object') last.current = answer;
    const piece = answer ?? (last.current?.blank === blank.name ? last.current : undefined);
    const inlay = view.inlays.find(({ step }) => step === view.frames[frameIndex]?.step);
    const [apart, setApart] = useState(false);
    const halves =
        inlay !== undefined && apart
            ? halvesOf(inlay, frameIndex, (frame, name) => rounds.get({ ...wish, frame, blank: name }))
            : undefined;
    if (typeof piece === 'string') return <p class="quiet">{piece}</p>;
    if (piece === undefined) return <p class="quiet">Working it out …</p>;
    return (
        <>
            <Picture view={view} piece={piece} section={section} inlay={inlay} halves={halves} />
            {inlay !== undefined && (
                <p>
                    <label>
                        <input type="checkbox" checked={apart} onChange={(event) => setApart(event.currentTarget.checked)} /> Both
                        halves coming together
                    </label>
                </p>
            )}
            <p class="words">{piece.words}</p>
        </>
    );
}

interface Halves {
    readonly pocket: RoundView;
    readonly relief: RoundView;
}

/** Both as they lie before the step; undefined while they are not there. */
function halvesOf(
    { relief, pocket }: InlayView,
    frame: number,
    get: (frame: number, blank: string) => RoundView | string | undefined,
): Halves | undefined {
    const [board, half] = [get(frame - 1, pocket.blank), get(frame - 1, relief.blank)];
    return typeof board === 'object' && typeof half === 'object' ? { pocket: board, relief: half } : undefined;
}

interface PictureProps {
    readonly view: BenchView;
    readonly piece: RoundView;
    readonly section: SectionView;
    readonly inlay: InlayView | undefined;
    readonly halves: Halves | undefined;
}

const sizes = [1200, 2000, 3000, 4000] as const;
const rad = Math.PI / 180;

function Picture({ view, piece, section, inlay, halves }: PictureProps) {
    const canvas = useRef<HTMLCanvasElement>(null);
    const [viewer, trouble, isStill] = useViewer(canvas);
    const [orbit, look] = useState<Orbit>(firstOrbit);
    const [light, setLight] = useState({ around: 150, above: 28 });
    const [heights, setHeights] = useState(1);
    const [isCut, setCut] = useState(false);
    const [size, setSize] = useState<number>(2000);
    const over = useTurning();
    const meeting = useTurning();
    const screen = useSize(canvas);
    const height = Math.max(220, Math.min(520, screen.width * 0.62));
    const together =
        inlay !== undefined && halves !== undefined ? comingTogether(inlay, halves.pocket, halves.relief, meeting.at) : undefined;
    const scene: RoundScene = {
        pieces: together?.pieces ?? [{ view: piece, x: 0, y: 0, z: 0, turn: over.at * Math.PI }],
        ...(together === undefined ? {} : { within: together.within }),
        section: isCut && together === undefined ? section : undefined,
        orbit,
        light: { around: light.around * rad, above: light.above * rad },
        heights,
    };
    useLayoutEffect(() => {
        viewer?.resize(screen.width, height);
        viewer?.show(scene);
    });
    useEffect(() => {
        if (viewer === undefined || canvas.current === null) return;
        return offerPicture(canvas.current, () => viewer.picture(1600));
    }, [viewer]);
    useWheel(canvas, (event) => look(closer(orbit, Math.exp(-event.deltaY * 0.0022))));
    const press = (event: KeyboardEvent) => {
        const next = orbitByKey(orbit, event.key, event.shiftKey);
        if (next !== undefined) look(next);
        else if (event.key === 't' || event.key === 'T') over.play();
        else if (event.key === 'l' || event.key === 'L')
            setLight({ ...light, around: (light.around + (event.shiftKey ? 345 : 15)) % 360 });
        else return;
        event.preventDefault();
    };
    const drag = (event: PointerEvent) => {
        if (event.button > 2 || canvas.current === null) return;
        const moves = event.shiftKey || event.button === 2;
        followPointer(canvas.current, event, (right, down) => {
            const { zoom } = orbit;
            look(
                moves
                    ? moved(orbit, -right / screen.width / zoom, -down / height / zoom)
                    : turned(orbit, -right * 0.008, down * 0.008),
            );
        });
    };
    const save = () => {
        if (viewer === undefined) return;
        editor.postMessage({ type: 'save-picture', name: `${view.recipe}-${piece.blank}`, png: viewer.picture(size) });
    };
    return (
        <>
            <canvas
                ref={canvas}
                style={{ height: `${height}px` }}
                tabIndex={0}
                role="img"
                aria-roledescription="picture in the round"
                aria-label={`${piece.words} Arrow keys turn it, with Shift they move it; plus and minus zoom, zero shows the whole, T turns it over, L moves the light.`}
                onKeyDown={press}
                onPointerDown={drag}
                onContextMenu={(event) => event.preventDefault()}
            />
            {trouble !== undefined && <p class="quiet">{trouble}</p>}
            {together !== undefined && (
                <div class="turning">
                    <button type="button" onClick={meeting.play} disabled={meeting.playing}>
                        {meeting.at < 1 ? 'Bring together' : 'Take apart'}
                    </button>
                    <Slider
                        label="Coming together"
                        value={Math.round(meeting.at * 100)}
                        most={100}
                        unit="%"
                        set={(at) => meeting.scrub(at / 100)}
                    />
                </div>
            )}
            <div class="round-tools">
                <Slider
                    label="Light from"
                    value={light.around}
                    most={359}
                    unit="°"
                    set={(around) => setLight({ ...light, around })}
                />
                <Slider
                    label="Light height"
                    value={light.above}
                    least={4}
                    most={85}
                    unit="°"
                    set={(above) => setLight({ ...light, above })}
                />
                <Slider label="Heights" value={heights} least={1} most={12} unit=" times" set={setHeights} />
                {together === undefined && !isStill && (
                    <label>
                        <input type="checkbox" checked={isCut} onChange={(event) => setCut(event.currentTarget.checked)} /> Cut
                        open at the section line
                    </label>
                )}
                <span class="turning">
                    <button type="button" onClick={over.play} disabled={over.playing || together !== undefined || isStill}>
                        Turn over
                    </button>
                    <button type="button" onClick={() => look(firstOrbit)}>
                        Whole piece
                    </button>
                </span>
                <span class="turning">
                    <button type="button" onClick={save} disabled={viewer === undefined}>
                        Save picture …
                    </button>
                    <select
                        aria-label="Width of the saved picture"
                        value={size}
                        onChange={(event) => setSize(Number(event.currentTarget.value))}
                    >
                        {sizes.map((px) => (
                            <option key={px} value={px}>
                                {px} px wide
                            </option>
                        ))}
                    </select>
                </span>
            </div>
        </>
    );
}

interface SliderProps {
    readonly label: string;
    readonly value: number;
    readonly least?: number;
    readonly most: number;
    readonly unit: string;
    readonly set: (value: number) => void;
}

function Slider({ label, value, least = 0, most, unit, set }: SliderProps) {
    return (
        <label class="slider">
            <span>{label}</span>
            <input
                type="range"
                min={least}
                max={most}
                value={value}
                aria-valuetext={`${value}${unit}`}
                onInput={(event) => set(Number(event.currentTarget.value))}
            />
            <output>{`${value}${unit}`}</output>
        </label>
    );
}

/** What draws on a canvas, once it is loaded, and what there is to say about that. */
function useViewer(canvas: {
    readonly current: HTMLCanvasElement | null;
}): [viewer: RoundViewer | undefined, trouble: string | undefined, isStill: boolean] {
    const [viewer, setViewer] = useState<RoundViewer>();
    const [trouble, setTrouble] = useState<string>();
    const [isStill, setStill] = useState(false);
    useEffect(() => {
        let made: RoundViewer | undefined;
        let gone = false;
        loadRoundChunk().then(
            ({ createViewer, createStill }) => {
                if (gone || canvas.current === null) return;
                try {
                    made = createViewer(canvas.current);
                } catch {
                    setTrouble('This editor draws no WebGL: a still picture instead.');
                    made = createStill(canvas.current);
                    setStill(true);
                }
                setViewer(made);
            },
            (error) => setTrouble(error instanceof Error ? error.message : `${error}`),
        );
        return () => {
            gone = true;
            made?.dispose();
        };
    }, [canvas]);
    return [viewer, trouble, isStill];
}
