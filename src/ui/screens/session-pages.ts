/**
 * The pages of a session, of the tests after the repair and of a drill: which page lies over which, what a key does
 * there, and what comes after a command was done or refused. No React, no disk: what happens goes in as an event, what
 * is wanted comes out as an effect. What is kept here may be lost without harm; all else follows from the session.
 */
import { TEST_LINES } from './any-test-form-state.ts';
import type { Proposal, SuspectRow } from '../../session/advisor.ts';
import type { CaptureAsk } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import type { StepCapture } from '../../session/events.ts';
import type { Session } from '../../session/session.ts';
import type { TestToDo } from '../../session/session-tests.ts';
