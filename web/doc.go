// Package web holds the app's built pages. The sources are in src: Svelte and
// TypeScript, made into dist by "npm run build" ("make web"). A placeholder page
// is committed, so that the command can be built without Node.
package web
