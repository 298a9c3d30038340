package oakum.portal.site;

import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;

@RestController
@Tag(name = "Photos")
@RequestMapping("/api/v1/houses/{house}/photos")
class PhotoController {
    private final Photos photos;
    private final Clock clock;

    PhotoController(Photos photos, Clock clock) {
        this.photos = photos;
        this.clock = clock;
    }

    @GetMapping
    List<PhotoShown> listPhotos(@PathVariable String house) {
        return photos.list(house);
    }

    @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    @ResponseStatus(HttpStatus.CREATED)
    PhotoShown sendPhoto(
            @PathVariable String house,
            @RequestPart("file") MultipartFile file,
            @RequestParam UUID clientId,
            @RequestParam(defaultValue = "") @Size(max = 200) String place,
            @RequestParam(defaultValue = "") @Size(max = 500) String card,
            @RequestParam(required = false) @Nullable Instant takenAt)
            throws IOException {
        return photos.keep(house, clientId, file.getBytes(), place, card, takenAt == null ? clock.instant() : takenAt);
    }

    @GetMapping(path = "/{id}", produces = MediaType.IMAGE_JPEG_VALUE)
    ResponseEntity<byte[]> getPhoto(@PathVariable String house, @PathVariable UUID id) {
        return picture(id, photos.picture(house, id, false));
    }

    @GetMapping(path = "/{id}/thumbnail", produces = MediaType.IMAGE_JPEG_VALUE)
    ResponseEntity<byte[]> getPhotoThumbnail(@PathVariable String house, @PathVariable UUID id) {
        return picture(id, photos.picture(house, id, true));
    }

    /** A page may show it as a picture; opened by itself it is a download and can run nothing. */
    private static ResponseEntity<byte[]> picture(UUID id, byte[] jpeg) {
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                .header("X-Content-Type-Options", "nosniff")
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename("photo-" + id + ".jpg")
                                .build()
                                .toString())
                .header("Content-Security-Policy", "default-src 'none'; sandbox")
                .cacheControl(
                        CacheControl.maxAge(Duration.ofDays(30)).cachePrivate().immutable())
                .body(jpeg);
    }
}
