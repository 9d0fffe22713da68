/** Captures as a session on the screen has them: measured, chosen from folders, held against known-good ones and kept as such. */
import { dirname, resolve } from 'node:path';
import type { Model } from '../../circuit/model.ts';
import type { Advisor } from '../../session/advisor.ts';
import type { CaptureAsk } from '../../session/capture-step.ts';
import type { SessionDriver } from '../../session/driver.ts';
import type { SessionVehicle } from '../../session/events.ts';
import { insteadOfSheet, statedBefore, statedOnSheet } from '../../session/instead-of-sheet.ts';
import type { Session } from '../../session/session.ts';
import { isProblem } from '../../source/problem.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { CaptureBeside, KeptCapture, OpenedSession } from '../../ui/app-services.ts';
import { type GoodPlaces, isAllKept, keepGood, keepProblem, keptFor } from './good-captures.ts';
import type { Desk } from './open-desk.ts';
import {
  type CaptureContext,
  captureFiles,
  measureFor,
  rememberFolder,
} from './session-captures.ts';

/** The model behind a session: as it began, and as it is known now. */
export interface ModelsAtHand {
  readonly model: Model | null;
  readonly modelNow: () => Model | null;
  readonly advisor: Advisor | null;
}

/** What a screen asks of captures. */
export function capturesAtHand(
  desk: Desk,
  driver: SessionDriver,
  models: ModelsAtHand,
): Pick<OpenedSession, 'measureCapture' | 'captures' | 'goodCaptures'> {
  const { job } = driver.session().opened;
  /** Folders that captures of this session were read from. */
  const readFrom = new Set<string>();
  const keepable = keepableOn(desk);
  const offered = offeredOn(desk, driver);
  return {
    measureCapture: async (ask, path, beside = {}) => {
      const stated = statedOnSheet(ask, job);
      const against = stated ?? statedBefore(ask, driver.session()) ?? offered(ask)?.path;
      const usual = against === undefined ? {} : { against };
      const context = contextOf(desk, driver, models, beside);
      const measured = await measureFor(ask, path, context, { ...usual, ...beside });
      const found = insteadOfSheet(measured, stated, beside.against);
      if (found.ok)
        for (const one of [path, beside.second]) {
          if (typeof one !== 'string') continue;
          rememberFolder(desk, one);
          readFrom.add(dirname(resolve(desk.cwd, one)));
        }
      return found;
    },
    captures: captureFiles(desk),
    goodCaptures: {
      offered,
      canKeep: () => !desk.preview && keepable.of(driver.session()),
      keep: async () => {
        const session = driver.session();
        const done = await keepGood(goodPlaces(desk, readFrom), session);
        if (!isProblem(done) && done.left.length === 0) keepable.kept(session);
        return done;
      },
    },
  };
}

function contextOf(
  desk: Desk,
  driver: SessionDriver,
  { model, modelNow, advisor }: ModelsAtHand,
  { fault }: CaptureBeside,
): CaptureContext {
  const { vehicle } = driver.session().opened;
  const isBench = vehicle.kind === 'bench';
  return {
    model,
    sound: modelNow(),
    cars: () => advisor?.diagnosis(driver.session()).carsLeft ?? null,
    vehicle: isBench && fault !== undefined ? { ...vehicle, fault } : atRest(vehicle),
    carOf: isBench ? vehicle.fault : HEALTHY,
    cwd: desk.cwd,
  };
}

/** What a capture is taken of: a fault that comes and goes is not there. */
function atRest(vehicle: SessionVehicle): SessionVehicle {
  return vehicle.kind === 'bench' && vehicle.intermittent
    ? { ...vehicle, fault: HEALTHY }
    : vehicle;
}

/** The disk is looked at once for each picture: a screen asks at every key. */
function offeredOn(desk: Desk, driver: SessionDriver): (ask: CaptureAsk) => KeptCapture | null {
  const looked = new Map<string, KeptCapture | null>();
  return (ask) => {
    const key = ask.kind === 'test' ? JSON.stringify(ask.test) : `step ${ask.step.id}`;
    const places = { disk: desk.disk, folder: desk.goodCaptures };
    if (!looked.has(key)) looked.set(key, keptFor(places, driver.session(), ask));
    return looked.get(key) ?? null;
  };
}

/** Whether captures of a session are offered to be kept: looked up once for each state, and not once all of them are. */
function keepableOn(desk: Desk) {
  let known: { readonly session: Session; readonly can: boolean } | null = null;
  return {
    of: (session: Session): boolean => {
      if (known?.session !== session) {
        const can = keepProblem(session) === null && !isAllKept(goodPlaces(desk), session);
        known = { session, can };
      }
      return known.can;
    },
    kept: (session: Session): void => {
      known = { session, can: false };
    },
  };
}

/** Where this desk keeps known-good captures, and looks for those that are to be kept. */
export function goodPlaces(desk: Desk, readFrom: Iterable<string> = []): GoodPlaces {
  const last = desk.settings().captures;
  const read = [...readFrom, desk.cwd, ...(last === '' ? [] : [last])];
  return { disk: desk.disk, folder: desk.goodCaptures, read };
}
