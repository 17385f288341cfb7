import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { zonesOfOption } from '../../../src/exchange/keep-clear/spot-zones';
import {
  evaluatePlan,
  type FitProblem,
  type Mount,
  type SpeakerInput,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { addPair, changeSpeaker, mountSpeaker, setPanelMeasure } from '../../../src/plan/edits';
import type { Plan } from '../../../src/plan/types';
import { type FitBoard, problemsOf } from '../../../src/store/fit-of-board';
import {
  fitSentences,
  fitUnknowns,
  inUnit,
  problemWords,
  verdictOf,
  worstFirst,
} from '../../../src/workbench/fit/fit-words';
import { groupFit, groupSentence } from '../../../src/workbench/fit/group-words';

const EMPTY: Plan = { ...demoPlan(), options: [{ id: 'a', title: 'Only', speakers: [] }] };

/** A pair of tweeters on the pillars, changed as told. */
const tweeters = (change: (draft: Plan) => void = () => undefined, mount?: Mount): FitBoard =>
  boardOf(
    produce(EMPTY, (draft) => {
      addPair('a', 'tweeter', 25)(draft);
      mountSpeaker('a', 'tweeter-left', mount ?? { panel: 'pillar-left', u: 0.5, v: 0.45 })(draft);
      change(draft as Plan);
    }),
  );

function boardOf(plan: Plan): FitBoard {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('expected one option');
  return { cabin: answer.cabin, option, result };
}
const left = ({ option }: FitBoard): SpeakerInput => {
  const speaker = option.speakers.find(({ side }) => side === 'left');
  if (!speaker) throw new Error('expected a left one');
  return speaker;
};
const panelOf = ({ cabin }: FitBoard) =>
  cabin.panels.find(({ id }) => id === 'pillar-left') ?? null;
const deep = changeSpeaker('a', 'tweeter-left', { body: { flange: 50, cutout: 40, depth: 60 } });
const problem = (kind: FitProblem['kind'], by: number | null, hard = false): FitProblem => ({
  kind,
  sentence: `${kind} ${by}`,
  by,
  hard,
});

describe('whether a speaker fits, in words', () => {
  it('tells millimetres too deep for the pillar, until the panel is measured deeper', () => {
    const board = tweeters((draft) => deep(draft as never));
    const said = () => fitSentences(problemsOf(board, 'tweeter-left'), 'mm', []);
    expect(
      said().some((text) => /^\d+(\.\d)? mm too deep for the left A-pillar\.$/.test(text)),
    ).toBe(true);
    const measured = tweeters((draft) => {
      deep(draft as never);
      setPanelMeasure('pillar-left', { depthBehind: 90 })(draft as never);
    });
    expect(problemsOf(measured, 'tweeter-left').map(({ kind }) => kind)).not.toContain('depth');
    // The other side was not measured.
    expect(problemsOf(measured, 'tweeter-right').map(({ kind }) => kind)).toContain('depth');
  });

  it('puts keep-clear first, then what has no number, then the most millimetres, then litres', () => {
    const kinds = worstFirst([
      problem('airspace', 300),
      problem('depth', 4),
      problem('zone', 1, true),
      problem('no-panel', null),
      problem('outline', 12),
    ]).map(({ kind }) => kind);
    expect(kinds).toEqual(['zone', 'no-panel', 'outline', 'depth', 'airspace']);
  });

  it('is not known while no body is entered, and says so', () => {
    const board = tweeters((draft) =>
      changeSpeaker('a', 'tweeter-left', { body: null })(draft as never),
    );
    const bare = left(board);
    expect(verdictOf(bare, [])).toBe('unknown');
    expect(fitUnknowns(bare, panelOf(board), 'mm').join(' ')).toContain('No body is entered');
  });

  it('tells a usual depth from a measured one', () => {
    const usual = tweeters();
    expect(fitUnknowns(left(usual), panelOf(usual), 'mm').join(' ')).toContain(
      'are the usual depth, not measured',
    );
    const depth = panelOf(usual)?.depthBehind ?? 0;
    for (const depthBehind of [depth, depth + 30]) {
      const measured = tweeters((draft) =>
        setPanelMeasure('pillar-left', { depthBehind })(draft as never),
      );
      expect(panelOf(measured)?.usual).toEqual({ depthBehind: depth });
      expect(fitUnknowns(left(measured), panelOf(measured), 'mm').join(' ')).not.toContain('usual');
    }
  });

  it('speaks of inches where the page does, and leaves names alone', () => {
    expect(inUnit('25.4 mm too deep for "25.4 mm board"', 'in')).toBe(
      '1.00 in too deep for "25.4 mm board"',
    );
    expect(inUnit('4 mm too deep', 'mm')).toBe('4 mm too deep');
    // 0.563 and 0.957 in: less would not do.
    expect(inUnit('14.3 mm more stand-off is wanted: 24.3 mm', 'in')).toBe(
      '0.57 in more stand-off is wanted: 0.96 in',
    );
  });

  it('calls other speakers as the page does', () => {
    const board = boardOf(demoPlan());
    const speakers = board.option.speakers;
    const other: FitProblem = {
      kind: 'speaker',
      sentence: 'reaches 25 mm along its axis into the left midrange',
      by: 25,
      with: 'midrange-left',
      hard: false,
    };
    expect(problemWords(other, 'mm', speakers)).toBe(
      'reaches 25 mm along its axis into the left mid',
    );
  });
});

describe('the short sign of a pair', () => {
  const among = boardOf(demoPlan()).option.speakers;
  const mids = among.filter(({ role }) => role === 'midrange');
  const say = (wrong: Record<string, FitProblem[]>) => {
    const fit = groupFit(mids, (id) => wrong[id] ?? [], 'mm', among);
    return fit && groupSentence(fit, among);
  };

  it('is nothing while both fit', () => {
    expect(say({})).toBeNull();
  });

  it('names the side, or both, and the worst of it', () => {
    expect(say({ 'midrange-right': [problem('depth', 4), problem('outline', 9)] })).toBe(
      'Right mid does not fit: outline 9.',
    );
    const both = {
      'midrange-left': [problem('depth', 4)],
      'midrange-right': [problem('depth', 5)],
    };
    expect(say(both)).toBe('Left and right mid do not fit: depth 4.');
  });

  it('says keep-clear before anything else', () => {
    const wrong = {
      'midrange-left': [problem('depth', 90)],
      'midrange-right': [problem('zone', 2, true)],
    };
    expect(say(wrong)).toBe('Right mid is in a keep-clear zone: zone 2.');
  });
});

describe('keep-clear zones', () => {
  it('are the same for the fit, the cautions and every file, all over the pillar and the door', () => {
    let hits = 0;
    for (const panel of ['pillar-left', 'door-upper-left', 'kick-left', 'dash-face-left'])
      for (const u of [0.1, 0.5, 0.9])
        for (const v of [0.1, 0.4, 0.7, 0.95]) {
          const board = tweeters(undefined, { panel, u, v });
          const files = zonesOfOption(board.cabin, board.option, board.result);
          for (const { speaker, zones } of files) {
            const fit = problemsOf(board, speaker.id).filter(({ kind }) => kind === 'zone');
            expect(fit.map((one) => one.with)).toEqual(zones.map(({ id }) => id));
            expect(fit.every(({ hard }) => hard)).toBe(true);
            hits += zones.length;
          }
        }
    expect(hits).toBeGreaterThan(10);
  });
});
