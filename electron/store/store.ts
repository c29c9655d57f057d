import type DatabaseClass from 'better-sqlite3';

/** An open household database: one writer, WAL, every commit on disk before it is confirmed. */
export type Store = DatabaseClass.Database;

/** Marks the file as a household of ours (ASCII "TRUN"). */
export const APPLICATION_ID = 0x5452554e;
