package oakum.portal.reading;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/v1/houses/{house}/readings")
class ReadingController {
    private final Ingestion ingestion;
    private final Readings readings;
    private final ColumnMaps maps;
    private final HouseTodays todays;

    ReadingController(Ingestion ingestion, Readings readings, ColumnMaps maps, HouseTodays todays) {
        this.ingestion = ingestion;
        this.readings = readings;
        this.maps = maps;
        this.todays = todays;
    }

    @Operation(
            summary = "Bring readings in",
            description =
                    "CSV, long (sensor,at,value) or wide (a time and one column a sensor), or one JSON object a line; gzip"
                            + " is known by itself. One request is kept as a whole or not at all, and sent again nothing"
                            + " doubles. The parameters say how a delimited table is read and go before those of the named"
                            + " column map.",
            requestBody =
                    @RequestBody(
                            required = true,
                            content = {
                                @Content(mediaType = "text/csv", schema = @Schema(type = "string", format = "binary")),
                                @Content(
                                        mediaType = "application/x-ndjson",
                                        schema = @Schema(type = "string", format = "binary"))
                            }))
    @PostMapping(consumes = {"text/csv", "application/x-ndjson"})
    ReadingBatch bringReadings(
            @PathVariable String house,
            @RequestParam(required = false) @Nullable String map,
            @RequestParam(required = false) @Nullable List<String> timeColumn,
            @RequestParam(required = false) @Nullable String timeFormat,
            @RequestParam(required = false) @Nullable String zone,
            @RequestParam(required = false) @Nullable String delimiter,
            @RequestParam(required = false) @Nullable String decimal,
            @RequestParam(required = false) @Nullable Integer headerLine,
            @RequestParam(required = false) @Nullable List<String> missing,
            HttpServletRequest request)
            throws IOException {
        MediaType type = MediaType.parseMediaType(request.getContentType());
        ColumnMap said = new ColumnMap(timeColumn, timeFormat, zone, delimiter, decimal, headerLine, missing, null);
        ColumnMap kept = map == null ? ColumnMap.NONE : maps.get(house, map).map();
        return ingestion.take(
                house,
                type.getSubtype().equals("csv") ? Ingestion.Form.DELIMITED : Ingestion.Form.JSON_LINES,
                request.getInputStream(),
                request.getContentLengthLong(),
                charset(type),
                kept.with(said));
    }

    @Operation(summary = "Readings in buckets, for a chart")
    @GetMapping
    ReadingSeries readingSeries(
            @PathVariable String house,
            @RequestParam List<String> sensor,
            @RequestParam(required = false) @Nullable Instant from,
            @RequestParam(required = false) @Nullable Instant to,
            @RequestParam(defaultValue = "500") int points,
            @RequestParam(defaultValue = "false") boolean persistence) {
        return readings.series(house, sensor, from, to, points, persistence);
    }

    @Operation(summary = "How the house is today, and who looked at its readings")
    @GetMapping("/today")
    HouseToday houseToday(@PathVariable String house) {
        return todays.of(house);
    }

    @Operation(summary = "The fingerprint of a series")
    @GetMapping("/series-hash")
    Readings.SeriesHash seriesHash(
            @PathVariable String house,
            @RequestParam String sensor,
            @RequestParam Instant from,
            @RequestParam Instant to) {
        return readings.hash(house, sensor, from, to);
    }

    @Operation(summary = "What was refused of a batch, with the reason")
    @GetMapping("/rejects")
    Ingestion.Rejects readingRejects(
            @PathVariable String house, @RequestParam UUID batch, @RequestParam(defaultValue = "-1") int after) {
        return ingestion.rejects(house, batch, after);
    }

    private static Charset charset(MediaType type) {
        Charset named = type.getCharset();
        return named == null ? StandardCharsets.UTF_8 : named;
    }
}
