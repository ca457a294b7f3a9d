# Two stages: build a static binary, then ship it with nothing else.
FROM golang:1.26-bookworm AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -ldflags="-s -w" -o /coatwright ./server \
 && mkdir -p /empty/data

FROM scratch
COPY --from=build /coatwright /coatwright
# The data folder belongs to the user that the server runs as.
COPY --from=build --chown=10001:10001 /empty/data /data
USER 10001:10001
VOLUME /data
EXPOSE 8080
HEALTHCHECK --interval=30s --timeout=4s --start-period=5s CMD ["/coatwright", "health", "http://127.0.0.1:8080/healthz"]
ENTRYPOINT ["/coatwright"]
CMD ["-listen", "0.0.0.0:8080", "-data", "/data"]
