#!/usr/bin/env bash
# Makes a TypeScript client of the kept OpenAPI document, compiles it, and takes a part of the demonstration through a stage with it.
# Needs Node and npm, and a service with the demonstration: tests/typescript-client.sh [http://127.0.0.1:5080]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/typescript-client"
npm install --no-audit --no-fund --silent
npx openapi-typescript ../Traceability.GeneratedClient/openapi.json --output schema.d.ts
npx tsc
node drive.js "${1:-http://127.0.0.1:5080}"
