import type { Plugin } from 'esbuild';

export declare const quickFrames: Plugin;
export declare const quickStart: Plugin;
export declare const withoutDevtools: Plugin;
